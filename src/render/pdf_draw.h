#pragma once

#include <string>

#include "render/structure.h"
#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// A PDF as cairo leaves it, and the structure that belongs to it.
struct Drawn {
  std::string bytes;  // empty where cairo fails
  Structure structure;
};
Drawn draw_pdf(const sheet::Sheet& sheet, typeface::FontSet& fonts, Marks marks);

}  // namespace fretsheaf::render
