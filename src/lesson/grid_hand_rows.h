#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Finger, hand, spell, stroke and play rows: what belongs to what is struck at a count.
void read_hand_cell(const GridInput& input, const Cell& cell, BarDraft& bar);

}  // namespace fretsheaf::lesson
