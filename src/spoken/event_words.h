#pragma once

#include "spoken/note_words.h"
#include "spoken/sounding.h"

// What is said of an event beside its notes.
namespace fretsheaf::spoken {

std::string_view strum_said(lesson::Strum strum, const Phrases& phrases);

// How a note is played whose place a student's copy hides.
void say_touch(const score::Event& event, Sentences& sentences, const Phrases& phrases);

// The stroke, a fermata, and the labels that are printed under it.
void say_labels(const Onset& onset, const score::Example& example, Sentences& sentences, const Phrases& phrases);

}  // namespace fretsheaf::spoken
