#pragma once

#include <optional>
#include <span>

#include "layout/type.h"
#include "sheet/sheet.h"

namespace fretsheaf::layout {

// The smallest box that holds what the items draw (links draw nothing); nullopt where they draw nothing. Glyphs by
// their outlines, curves by their control points, lines with their width.
std::optional<sheet::Box> ink_of(std::span<const sheet::Item> items, Type& type);

}  // namespace fretsheaf::layout
