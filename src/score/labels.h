#pragma once

#include <span>
#include <string>
#include <vector>

#include "lesson/lesson.h"
#include "score/score.h"

namespace fretsheaf::score {

// The degrees of the notes that start, from the lowest up, joined by spaces; in the chord, or in the key where there is
// none. Dead notes have none.
std::string degrees(std::span<const Note> notes, const std::optional<theory::Chord>& chord, const theory::Key& key);
// Their names ("B♭ D").
std::string note_names(std::span<const Note> notes, const Naming& naming);

bool asks_for(const lesson::Example& example, lesson::Label label);

// The kinds of degrees that an example asks for, each once, in its order.
std::vector<lesson::Label> degree_kinds(const lesson::Example& example);

// Writes the labels of a symbol at which something starts: the count, and whichever of degree and name the example's
// labels ask for.
void label(Event& event, const lesson::Example& example, const theory::Meter& meter,
           const std::optional<theory::Chord>& chord, const Naming& naming);

}  // namespace fretsheaf::score
