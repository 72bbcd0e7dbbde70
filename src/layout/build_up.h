#pragma once

#include <vector>

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// The steps of a build-up with their heading: a box and the bars, in rows of equal columns, read row by row.
Blocks build_up_blocks(const std::vector<score::Step>& steps, double width, Setter& setter);

}  // namespace fretsheaf::layout
