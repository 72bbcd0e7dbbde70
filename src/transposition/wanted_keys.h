#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "theory/key.h"

namespace fretsheaf::transposition {

// The keys that a `--key` asks for, of a lesson in `own`: a tonic alone keeps the lesson's mode, "all" are the twelve
// keys with the fewest signs. Else why it cannot be had: no key, another mode, more than seven signs.
std::variant<std::vector<theory::Key>, std::string> wanted_keys(std::string_view text, const theory::Key& own);

}  // namespace fretsheaf::transposition
