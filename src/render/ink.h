#pragma once

#include <optional>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// The exact box of what an item draws, a group's that of all in it; nullopt where it draws nothing (a link, a space).
// Glyphs count by their outlines, curves as far as they go, lines with their width; the sharp corners of a stroked path
// count half its width.
std::optional<sheet::Box> ink_box(const sheet::Item& item, typeface::Shaper& shaper);
std::optional<sheet::Box> ink_box(const sheet::Group& group, typeface::Shaper& shaper);

}  // namespace fretsheaf::render
