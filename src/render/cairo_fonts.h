#pragma once

#include <map>
#include <utility>
#include <vector>

#include "render/cairo_types.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// The set's fonts as cairo draws them: unhinted, at their true widths.
class CairoFonts {
 public:
  explicit CairoFonts(typeface::FontSet& fonts) : fonts_(fonts) {}

  // Owned by this; nullptr where the font cannot be drawn.
  cairo_scaled_font_t* font(typeface::FontId font, double size);

 private:
  cairo_font_face_t* face(typeface::FontId font);

  typeface::FontSet& fonts_;
  std::map<typeface::FontId, CairoFace> faces_;
  std::map<std::pair<typeface::FontId, double>, CairoFont> sizes_;
};

}  // namespace fretsheaf::render
