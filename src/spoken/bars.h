#pragma once

#include <string>
#include <vector>

#include "spoken/phrases.h"

namespace fretsheaf::spoken {

// A bar in words, in three parts, each of which may be empty but the first: what stands before it (its number, chord,
// section …), what is played (a sentence a line, or that it is as an earlier bar), what follows (a repeat, a way).
struct SaidBar {
  std::string head;
  std::string body;
  std::string tail;
};

// Every bar of an example. A bar that is played as one before it, or on the same strings so many frets higher or lower,
// is told by its number where that is shorter.
std::vector<SaidBar> bars_of(const score::Example& example, const Phrases& phrases);

}  // namespace fretsheaf::spoken
