#pragma once

#include <catch2/catch.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "platform/disk_system.h"
#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// Real fonts, and items made with them.
class Sample {
 public:
  typeface::FontId open(std::string_view name) {
    const auto opened = fonts.open(name);
    REQUIRE(std::holds_alternative<typeface::FontId>(opened));
    return std::get<typeface::FontId>(opened);
  }

  // A line of text with its origin at (x, y), as layout makes it.
  std::vector<sheet::Item> text(std::string_view text, std::vector<typeface::FontId> list, double x, double y,
                                double size = 10, double tracking = 0);

  platform::DiskSystem system;
  typeface::FontSet fonts{system};
  typeface::FontId charis = open("charis-regular");
  typeface::FontId inter = open("inter-semibold");
  typeface::FontId music = open("noto-music");
};

// A page of the size A4 with these items.
sheet::Sheet a4(std::vector<sheet::Item> items);

}  // namespace fretsheaf::render
