#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "theory/pitch.h"

namespace fretsheaf::theory {

// A note's place counted in the major scale on some root: `number` 1 to 7, `alteration` in semitones ("b3" is 3, -1).
struct Degree {
  int number = 1;
  int alteration = 0;

  std::string to_string() const;  // "b3", "#4", "bb7"
  bool operator==(const Degree&) const = default;
};

// Steps on the line of fifths from the root: a fifth 1, a b7 -2. Numbers past 7 are an octave up: 9 is 2.
int fifths_of(Degree degree);
// The note's degree counted from a root, 1 to 7, spelled as the note is.
Degree degree_above(NoteName root, NoteName note);

// "3", "b7", "#4", "bb7"; numbers 1 to 7 (9, 11 and 13 are read as 2, 4 and 6). The whole text, else nullopt.
std::optional<Degree> parse_degree(std::string_view text);

}  // namespace fretsheaf::theory
