#pragma once

#include <vector>

#include "lesson/keys_lesson.h"
#include "lesson/lesson.h"
#include "source/diagnostic.h"
#include "source/text.h"

// Rules that need the whole lesson.
namespace fretsheaf::lesson {

// Whether each example's music could be read without an error: what asks for music that could not is left alone.
using SoundMusic = std::vector<bool>;

// Every `{{…}}` of every printed text: that it is one, and that what it asks for is there.
void check_texts(const LessonKeys& keys, const Lesson& lesson, const SoundMusic& sound, const source::Files& files,
                 source::Diagnostics& diagnostics);

// Puts the notes of the examples that `vary` names under the rhythms of those that name them. An example whose notes
// do not fit becomes unsound.
void fill_varied(Lesson& lesson, SoundMusic& sound, source::Diagnostics& diagnostics);

// That what stands beside the music fits it: as many bars of a form are marked as the example has, and a picture of its
// notes has notes.
void check_pictures(const Lesson& lesson, const SoundMusic& sound, source::Diagnostics& diagnostics);

// That the CommonMark of every printed text is words: raw HTML and pictures are errors, and so are links that lead
// anywhere but to the web or to a mailbox.
void check_commonmark(const LessonKeys& keys, const Lesson& lesson, const source::Files& files,
                      source::Diagnostics& diagnostics);

}  // namespace fretsheaf::lesson
