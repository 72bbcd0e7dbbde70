#pragma once

#include <string>

namespace fretsheaf::test {

// The inside of an SVG: a part, and so many that each refer ten times to the one before, as `reference` does ("#" is
// followed by its name, and stands where `#` does).
inline std::string referring(int levels, const std::string& reference = "<use href=\"#\"/>") {
  const auto to = [&](int level) {
    std::string text = reference;
    return text.insert(text.find('#') + 1, "a" + std::to_string(level));
  };
  std::string inside = "<g id=\"a0\"><path d=\"M0 0h4v4z\"/></g>";
  for (int level = 1; level <= levels; ++level) {
    inside += "<g id=\"a" + std::to_string(level) + "\">";
    for (int i = 0; i < 10; ++i) inside += to(level - 1);
    inside += "</g>";
  }
  return inside + to(levels);
}

}  // namespace fretsheaf::test
