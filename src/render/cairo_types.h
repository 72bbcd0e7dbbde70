#pragma once

#include <cairo.h>

#include <memory>

namespace fretsheaf::render {

struct CairoDeleter {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
  void operator()(cairo_scaled_font_t* font) const { cairo_scaled_font_destroy(font); }
};
using CairoContext = std::unique_ptr<cairo_t, CairoDeleter>;
using CairoSurface = std::unique_ptr<cairo_surface_t, CairoDeleter>;
using CairoFace = std::unique_ptr<cairo_font_face_t, CairoDeleter>;
using CairoFont = std::unique_ptr<cairo_scaled_font_t, CairoDeleter>;

}  // namespace fretsheaf::render
