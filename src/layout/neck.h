#pragma once

#include <string>

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// A picture of the neck under its heading: nut, wires in true proportion, inlays, strings by gauge, and the marked
// places: roots black squares, others circles. Where the frets of one row would be too narrow for what stands in them,
// the neck goes on in a row below. A left-handed picture is the mirror image, its letters and figures upright.
// To who does not see it the picture says `words`, or its heading where there are none.
Blocks neck_blocks(const score::NeckPicture& picture, const score::Score& score, double width, Setter& setter,
                   const std::string& words = {});

// Whether all of it stands in one row of this width.
bool neck_fits(const score::NeckPicture& picture, double width, Setter& setter);

}  // namespace fretsheaf::layout
