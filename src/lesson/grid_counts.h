#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// What was said of a count row, and is said once however often it stands there.
struct CountRowSaid {
  bool dash = false;
  bool comma = false;
};

// Reads a cell of the count row into the bar's counts, or its `%`. Whether they fit the meter is not seen here;
// of more than an example holds one too many is read.
void read_counts(const GridInput& input, const Cell& cell, CountRowSaid& said, BarDraft& bar);

}  // namespace fretsheaf::lesson
