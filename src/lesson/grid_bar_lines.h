#pragma once

#include <utility>
#include <vector>

#include "lesson/grid_signs.h"

namespace fretsheaf::lesson {

// What one row holds of one bar: columns [begin, end) of the row.
struct Cell {
  const GridRow* row = nullptr;
  int begin = 0;
  int end = 0;
  bool damaged = false;  // was reported, or what lies in it may belong elsewhere: not to be read
};

struct RowCells {
  const GridRow* row = nullptr;
  std::vector<Cell> cells;  // one a bar; fewer where the row stops early
};

// A strip cut into bars. Refers to the strip's rows.
struct StripCells {
  std::vector<Sign> signs;     // one more than there are bars
  RowCells count;              //
  std::vector<RowCells> rows;  // all others, in the order written
  int slipped = 0;             // a sign of the count row that no other row has, which was reported
  // Bar lines of single rows out of line, each with the bar that it should end; not reported yet.
  std::vector<std::pair<std::size_t, source::Diagnostic>> misplaced;
};

// Finds the count row's signs and holds the other rows to them. Reports all but what is in `misplaced`.
// REQUIRES: the strip has a count row.
StripCells read_cells(const GridInput& input, const Strip& strip);

}  // namespace fretsheaf::lesson
