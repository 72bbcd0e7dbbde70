#pragma once

#include <compare>
#include <string>
#include <vector>

#include "spoken/lexicon.h"
#include "theory/rational.h"

// The music that a listener makes of a walk-through's words, and nothing else.
namespace fretsheaf::spoken::test {

using theory::Rational;

// A note, a strum, a rest, or that a note before is held on.
struct Heard {
  int bar = 0;     // of its example's bars that have music, from 0
  Rational at;     // in beats from the full bar's start
  int string = 0;  // 0 a strum, -1 a rest
  int fret = 0;    // -1 a dead note; of a strum its kind
  Rational beats;  // 0 of what is held from before
  bool held = false;

  auto operator<=>(const Heard&) const = default;
};

// By example, each by bar, place and string. Words that no listener would understand are put into `lost`.
std::vector<std::vector<Heard>> hear(const std::string& words, const Lexicon& lexicon, std::string& lost);

std::string to_string(const Heard& heard);

}  // namespace fretsheaf::spoken::test
