#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Reads a cell of the count row into the bar's counts, or its `%`. Whether they fit the meter is not seen here.
void read_counts(const GridInput& input, const Cell& cell, BarDraft& bar);

}  // namespace fretsheaf::lesson
