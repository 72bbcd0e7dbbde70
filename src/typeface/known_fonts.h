#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fretsheaf::typeface {

// A line of `fonts/fonts.toml`.
struct KnownFont {
  std::string name;     // "charis-bold"
  std::string file;     // bare file name
  std::string package;  // of Debian
};

// All of them, by name.
const std::vector<KnownFont>& known_fonts();
// nullptr where there is no such name.
const KnownFont* known_font(std::string_view name);

// Whether a template names a font by its file's path.
inline bool is_font_path(std::string_view name) {
  return name.find('/') != std::string_view::npos || name.ends_with(".ttf") || name.ends_with(".otf");
}

}  // namespace fretsheaf::typeface
