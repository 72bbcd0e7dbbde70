#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Reads a cell of a string row and ties each note to its count: grace notes to the note that they lead to.
void read_string_cell(const GridInput& input, const Cell& cell, BarDraft& bar);

}  // namespace fretsheaf::lesson
