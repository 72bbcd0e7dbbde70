#pragma once

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// The tempo ladder with its heading: two rails a row, rungs between them, in each a tempo and boxes to tick, one for
// each clean pass. Rungs that do not fit beside each other go on in further rows of the same number.
Blocks ladder_blocks(const score::Ladder& ladder, double width, Setter& setter);

// Whether all rungs stand in one row of this width.
bool ladder_fits(const score::Ladder& ladder, double width, const templates::Measures& measures);

}  // namespace fretsheaf::layout
