#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "source/code.h"

namespace fretsheaf::exchange {

// Why a document's bytes are not taken, and where.
struct XmlRefusal {
  source::Code code{};
  std::size_t at = 0;
  std::string what;
  std::string help;
};

// Turns a document into UTF-8 without a byte-order mark: UTF-16 of either order by its mark (XML 1.0, appendix F) is
// converted, UTF-8 is left. Any other encoding, by its bytes or by its declaration, is refused by name.
std::optional<XmlRefusal> as_utf8(std::string& bytes);

// Looks a document over before it is parsed, in one pass: entities of its own (a way to make gigabytes of a few lines),
// elements inside elements beyond what scores have, and more elements than memory is for.
std::optional<XmlRefusal> look_over(std::string_view bytes);

}  // namespace fretsheaf::exchange
