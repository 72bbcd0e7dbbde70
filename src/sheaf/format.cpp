#include "sheaf/format.h"

#include <algorithm>
#include <array>

namespace fretsheaf::sheaf {

namespace {

constexpr std::array<std::string_view, 4> names = {"pdf", "svg", "musicxml", "mxl"};  // in the order of Format

}  // namespace

std::string_view format_name(Format format) {
  return names[static_cast<std::size_t>(format)];
}

std::optional<Format> parse_format(std::string_view name) {
  const auto* const found = std::ranges::find(names, name);
  if (found == names.end()) return std::nullopt;
  return static_cast<Format>(found - names.begin());
}

}  // namespace fretsheaf::sheaf
