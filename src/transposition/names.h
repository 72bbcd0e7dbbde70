#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "lesson/lesson.h"
#include "theory/key.h"

// Everything that is called by a name and follows the key: keys, chord symbols, forced spellings, chords in texts.
// Letters move by the interval of the tonics, so that an accidental means the same in every key; numerals and degrees
// follow by themselves.
namespace fretsheaf::transposition {

// What each part of a lesson is in after the move.
struct MovedKeys {
  theory::Key lesson;
  std::vector<theory::Key> examples;
};

// An example with a key of its own moves along; where that leads past seven signs, to the key that sounds the same.
MovedKeys moved_keys(const lesson::Lesson& lesson, const theory::Key& key);

// How far along the line of fifths a name moves.
int fifths_between(const theory::Key& from, const theory::Key& to);

// Moves the names of a lesson. Texts of a sheaf.toml stay: they are shared by lessons in many keys.
void move_names(lesson::Lesson& lesson, const MovedKeys& keys);

// The same for what stands in a file: a chord ("Bbm7/Db", kept as it is written but for its names), the bars of a form,
// the {{chord …}} of a text. Numerals stay.
std::string shifted_chord(std::string_view chord, int fifths);
std::string shifted_form(std::string_view bars, int fifths);
std::string shifted_text(std::string_view text, int fifths);

}  // namespace fretsheaf::transposition
