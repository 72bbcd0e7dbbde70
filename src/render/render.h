#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// The finished PDF's bytes: fonts embedded, text selectable, links, title, bookmarks; no date that changes.
std::string pdf(const sheet::Sheet& sheet, typeface::FontSet& fonts);

// One SVG document a page, as the design's "What an SVG page says of itself" has it; outlines once in <defs>.
std::vector<std::string> svg(const sheet::Sheet& sheet, typeface::FontSet& fonts);

}  // namespace fretsheaf::render
