#pragma once

#include <vector>

#include "layout/block.h"
#include "layout/type.h"
#include "score/score.h"
#include "source/diagnostic.h"
#include "template/template.h"

namespace fretsheaf::layout {

// One line of music, placed relative to x = 0 the text's left edge and y = 0 the baseline of the chord row (where there
// is no chord row, where it would be). `top` (≤ 0) and `bottom` are the ink's extremes above and below that.
struct MusicLine {
  std::vector<sheet::Item> items;
  double top = 0;
  double bottom = 0;
  int first_bar = 0;  // indices into the example's bars, both inclusive (a bar broken over two lines is in both)
  int last_bar = 0;
};

// Engraves an example: breaks it into lines optimally, justifies them to `width`, places all rows.
std::vector<MusicLine> engrave(const score::Example& example, const score::Score& score, double width, Type& type,
                               source::Diagnostics& diagnostics);

}  // namespace fretsheaf::layout
