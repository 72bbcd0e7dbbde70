#pragma once

#include <catch2/catch.hpp>
#include <string_view>

#include "platform/disk_system.h"
#include "typeface/fonts.h"

namespace fretsheaf::typeface {

// The packaged fonts themselves, opened by name.
class RealFonts {
 public:
  FontId open(std::string_view name) {
    const auto opened = set.open(name);
    REQUIRE(std::holds_alternative<FontId>(opened));
    return std::get<FontId>(opened);
  }

  platform::DiskSystem system;
  FontSet set{system};
  FontId inter = open("inter-semibold");
  FontId charis = open("charis-regular");
  FontId music = open("noto-music");
};

}  // namespace fretsheaf::typeface
