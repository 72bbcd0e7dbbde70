#pragma once

#include "sheet/sheet.h"

namespace fretsheaf::layout {

inline constexpr double tick_box_line = 0.078;  // of the box's side

// A box to tick: a square whose top left corner is there.
sheet::Path tick_box(sheet::Point corner, double side);

}  // namespace fretsheaf::layout
