#pragma once

#include <vector>

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// A run of a string cell: notes joined without filler.
struct Run {
  std::vector<NoteDraft> notes;
  int begin = 0;  // columns [begin, end)
  int end = 0;
  bool damaged = false;  // something in it could not be read, and was reported
};

// Cuts a cell of a string row into runs and reads their notes, without asking what they stand under.
std::vector<Run> read_runs(const GridInput& input, const Cell& cell);

}  // namespace fretsheaf::lesson
