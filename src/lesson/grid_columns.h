#pragma once

#include <vector>

#include "lesson/grid_pieces.h"

namespace fretsheaf::lesson {

// Where the columns of a bar come to stand.
struct BarColumns {
  int width = 0;
  std::vector<int> counts;  // where each begins
  // Where each piece begins and, with its dashes, ends: by row, as in BarPieces.
  std::vector<std::vector<std::pair<int, int>>> pieces;
};

// Sets every piece where it is to stand, from left to right. Columns are only put in, never taken out, so that a bar
// keeps the look that its teacher gave it: before a count where what stands with it needs more room, and at the bar's
// end. Columns set once stay when they are set again.
BarColumns set_columns(const BarPieces& bar);

}  // namespace fretsheaf::lesson
