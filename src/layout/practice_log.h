#pragma once

#include "layout/block.h"
#include "layout/prose.h"

namespace fretsheaf::layout {

// An empty log under its heading: date, tempo, clean passes and a note, so many rows to write in.
Blocks practice_log_blocks(int rows, double width, Setter& setter);

}  // namespace fretsheaf::layout
