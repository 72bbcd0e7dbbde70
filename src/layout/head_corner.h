#pragma once

#include <vector>

#include "layout/prose.h"
#include "score/score.h"
#include "sheet/sheet.h"

namespace fretsheaf::layout {

// What stands at the top right of a handout's head: the link's QR code, the logo, and on an answer key the words that
// say so, side by side from the right edge. Placed: x = 0 is the text's left edge, y = 0 its top.
struct HeadCorner {
  std::vector<sheet::Item> items;
  double taken = 0;   // of the text's width, with the gap before it; 0 where nothing stands there
  double bottom = 0;  // down to there
};

HeadCorner head_corner(const score::Heading& heading, double width, Setter& setter);

}  // namespace fretsheaf::layout
