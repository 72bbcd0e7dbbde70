#pragma once

#include <cstddef>

namespace fretsheaf::source {

// How many cells of a terminal's line a character takes, as the C library has it from Unicode: none for a mark that
// joins the character before it, two for a wide one (an emoji), else one, as for all where the library does not say. A
// tab is the caller's.
std::size_t cells_of(char32_t character);

}  // namespace fretsheaf::source
