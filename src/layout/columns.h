#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "layout/block.h"
#include "template/template.h"

namespace fretsheaf::layout {

// A short block (a ladder, practice notes) as it stands alone, and, where it can, as it stands in a column.
struct Short {
  Blocks wide;
  std::optional<Blocks> narrow;
};

double column_width(double width, const templates::Measures& measures);

// Of `count` equal things of which `fit` (at least 1) stand side by side: how many do, so that the rows come out as
// even as can be.
std::size_t even_columns(std::size_t count, std::size_t fit);

// The shorts one after another; two neighbours that both go into columns, and are short and even enough for it, side by
// side as one block.
Blocks stack_shorts(std::vector<Short> shorts, double width, const templates::Measures& measures);

}  // namespace fretsheaf::layout
