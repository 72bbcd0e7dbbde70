#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheet/sheet.h"

namespace fretsheaf::layout {

// A piece of a page that is never split: a paragraph's line, a heading, a line of music. Its items are placed relative
// to its own origin: x = 0 the text's left edge, y = 0 its top; the page filler only chooses y.
struct Block {
  std::vector<sheet::Item> items;
  double height = 0;  // from its top to the baseline or ink that the next gap is counted from
  // The gap before it, where it does not begin a page: natural, and how far it may give way or grow.
  double gap = 0;
  double gap_least = 0;
  double gap_most = 0;
  // The ink's least distance to the top margin when it begins a page.
  double top_of_page = 0;
  bool keep_with_next = false;          // never parted from the next block
  double part_penalty = 0;              // how bad a page break after it is (0 natural; larger is worse)
  std::optional<std::string> bookmark;  // an outline entry that leads here
};

}  // namespace fretsheaf::layout
