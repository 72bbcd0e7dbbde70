#pragma once

#include <span>
#include <string>
#include <string_view>

namespace fretsheaf::platform {

// The path of a font by its bare file name: first in the `known` folders, then anywhere below `root`, the first by the
// bytes of its path. Empty where there is none, or the name is not bare.
std::string find_font(std::string_view file_name, std::span<const std::string_view> known, const std::string& root);

}  // namespace fretsheaf::platform
