#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "layout/block.h"

namespace fretsheaf::layout {

// Where blocks may stand on a page, downward from its top.
struct PageRoom {
  double first_top = 0;     // page 1: no ink above it
  double later_top = 0;     // pages after it: no ink above it,
  double later_origin = 0;  // and no first origin above this, nor first ink where that begins below it
  double first_bottom = 0;  // page 1: no ink below it
  double bottom = 0;        // pages after it: no ink below it,
  std::optional<double> second_bottom = std::nullopt;  // or on page 2 below this, where it has more at its foot
};

// A block's origin on its page.
struct Placed {
  std::size_t block = 0;
  double y = 0;
};
using PagePlan = std::vector<Placed>;

// Every block once, in order, on as few pages as hold them, broken where it hurts least over the whole document
// (dynamic programming over all page ends). All pages but the last fill their height as far as the gaps may grow; the
// last stands at its natural height. A block taller than a page gets one of its own. No pages for no blocks.
std::vector<PagePlan> fill_pages(const Blocks& blocks, const PageRoom& room);

}  // namespace fretsheaf::layout
