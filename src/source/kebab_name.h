#pragma once

#include <cstddef>
#include <string_view>

namespace fretsheaf::source {

// A C++ name as files write it, with `-` for `_`, made by the compiler: `constexpr KebabName name("row_gap")`.
template <std::size_t size>
struct KebabName {
  char text[size]{};

  constexpr explicit KebabName(const char (&name)[size]) {
    for (std::size_t i = 0; i < size; ++i) text[i] = name[i] == '_' ? '-' : name[i];
  }

  constexpr std::string_view view() const { return {text, size - 1}; }
};

}  // namespace fretsheaf::source
