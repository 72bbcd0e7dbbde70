#pragma once

#include <string>

#include "layout/block.h"
#include "layout/paragraph.h"
#include "score/text.h"
#include "words/language.h"

namespace fretsheaf::layout {

// What the makers of blocks share: how words are set, which language they are broken in, and a number for each group
// that several blocks lie in.
struct Setter {
  Type& type;
  std::string language = "en";
  words::Language words = words::Language::en;
  int next_group = 1;

  int new_group() { return next_group++; }
  const templates::Measures& measures() const { return type.measures(); }
};

// CommonMark's blocks as lines, in a measure `width` wide. The first block's gap is left at the body's leading: whoever
// puts it after something else sets it. `under` is the level of the heading that the text stands under: 1 the sheet's
// title, 2 an example's; the text's own headings come below that.
Blocks set_prose(const score::Blocks& blocks, double width, Setter& setter, int under = 1);

// Whether no line of code in a text, set as an item of a list, is wider than `width`: columns are not broken where
// there is room for them elsewhere.
bool code_fits(const score::Blocks& text, double width, Setter& setter);

// Items numbered from 1, as practice notes are under their heading: each is a text of its own, and what it holds stands
// in from its number.
Blocks set_numbered(const std::vector<score::Blocks>& items, double width, Setter& setter);

}  // namespace fretsheaf::layout
