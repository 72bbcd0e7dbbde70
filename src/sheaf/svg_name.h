#pragma once

#include <string_view>

namespace fretsheaf::sheaf {

// The name of an SVG's element or attribute without a namespace prefix.
inline std::string_view local_name(std::string_view name) {
  const auto colon = name.rfind(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

}  // namespace fretsheaf::sheaf
