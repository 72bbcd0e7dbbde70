#pragma once

#include <cairo.h>

#include "sheet/sheet.h"

namespace fretsheaf::render {

// Draws a picture into its area; what cannot be drawn is left out.
void draw_image(cairo_t* context, const sheet::Image& image);

}  // namespace fretsheaf::render
