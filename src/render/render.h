#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// The finished PDF's bytes: fonts embedded, text selectable, links, title, bookmarks, all of it tagged after PDF/UA-1
// (see pdf_finish.h); a fixed date of creation (1 January 2000), so that the same sheet gives the same bytes. Links to
// other than http, https and mailto are left out. REQUIRES: all texts are UTF-8. Empty only where cairo fails (no
// memory, a length that is not finite).
std::string pdf(const sheet::Sheet& sheet, typeface::FontSet& fonts);

// One SVG document a page, as the design's "What an SVG page says of itself" has it; outlines once in <defs>.
std::vector<std::string> svg(const sheet::Sheet& sheet, typeface::FontSet& fonts);

}  // namespace fretsheaf::render
