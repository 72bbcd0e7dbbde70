#pragma once

#include <span>
#include <string>
#include <string_view>

namespace fretsheaf::source {

// The known word that `word` most probably meant: the smallest edit distance (insert, delete, replace, swap of
// neighbours; case differences count a half), the first of equals. Empty where none is near enough to be a slip (more
// than a third of the word's letters, at least one, differ, or nothing of it is left). Another case alone is always a
// slip.
std::string nearest(std::string_view word, std::span<const std::string_view> known);

}  // namespace fretsheaf::source
