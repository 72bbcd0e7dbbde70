#pragma once

#include <optional>
#include <string>

#include "sheet/sheet.h"

// Pictures from files: PNG by cairo, SVG by librsvg, which is loaded when the first one is drawn.
namespace fretsheaf::render {

struct ImageSize {
  double width = 0;  // pixels of a PNG; an SVG's own units
  double height = 0;
};

// How large a picture is; nullopt where it cannot be drawn.
std::optional<ImageSize> image_size(sheet::Image::Kind kind, const std::string& bytes);

// The picture as an address that holds it whole (RFC 2397), for a document that must need nothing outside itself.
std::string data_uri(const sheet::Image& image);

}  // namespace fretsheaf::render
