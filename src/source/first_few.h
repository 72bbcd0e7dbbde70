#pragma once

#include <cstddef>
#include <span>
#include <string>

namespace fretsheaf::source {

// A list for a message, of which only so much is named: "tide, shore and 12 more".
std::string first_few(std::span<const std::string> names, std::size_t most);

}  // namespace fretsheaf::source
