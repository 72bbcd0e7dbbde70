#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace fretsheaf::source {

// What a file may not have that is given to toml++: a key or a value that goes deeper than `deepest`, for the parser
// calls itself; or a character beyond ASCII outside of texts and comments, where TOML 1.0 has none and the parser's
// behaviour is undefined for some. Looked for through the bytes once, without recursion.
struct UnsafeToml {
  std::size_t at = 0;  // the first such byte
  bool too_deep = false;
};
std::optional<UnsafeToml> unsafe_toml(std::string_view bytes, int deepest);

}  // namespace fretsheaf::source
