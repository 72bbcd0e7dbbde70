#pragma once

#include <librsvg/rsvg.h>

namespace fretsheaf::render {

// The functions of librsvg that are used. It is not linked: it and what it needs would take longer to load than a page
// to draw, and few handouts have an SVG logo.
struct RsvgLibrary {
  decltype(&rsvg_handle_new_from_data) new_from_data = nullptr;
  decltype(&rsvg_handle_get_intrinsic_size_in_pixels) size_in_pixels = nullptr;
  decltype(&rsvg_handle_get_intrinsic_dimensions) dimensions = nullptr;
  decltype(&rsvg_handle_render_document) render_document = nullptr;
  decltype(&g_object_unref) unref = nullptr;
};

// nullptr where the library is not installed.
const RsvgLibrary* rsvg_library();

}  // namespace fretsheaf::render
