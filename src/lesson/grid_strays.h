#pragma once

#include "lesson/grid_bar_lines.h"
#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Reports the tokens of one bar that stand under no count: as one slip where the count cell as a whole is out of place,
// as one a column where several rows miss the same count, else each by itself.
void report_strays(const GridInput& input, const Cell& counts, const BarDraft& bar);

}  // namespace fretsheaf::lesson
