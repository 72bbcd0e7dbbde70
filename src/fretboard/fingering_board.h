#pragma once

#include <cstddef>
#include <vector>

#include "fretboard/neck.h"

namespace fretsheaf::fretboard {

// A neck with where its frets lie, in whole micrometres and millimetres from the nut of the neck, so that sums and ties
// are exact. A hand lies at a fret from 1 to last_hand().
struct Board {
  Neck neck;
  std::vector<int> micrometres;  // by fret, counted from the capo
  std::vector<int> millimetres;

  Board(Neck neck, double scale_length);
  int last_hand() const { return static_cast<int>(micrometres.size()) - 1; }
  // Micrometres between two frets. REQUIRES: low <= high.
  int span(int low, int high) const {
    return micrometres[static_cast<std::size_t>(high)] - micrometres[static_cast<std::size_t>(low)];
  }
};

// A hand's reach in micrometres: the most, the easy, and what a shape of the original's may span that spanned so much
// there, namely a tenth more than that or than the most.
extern const int most_micrometres;
extern const int easy_micrometres;
int kept_reach(int original_span);

}  // namespace fretsheaf::fretboard
