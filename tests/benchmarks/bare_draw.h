#pragma once

#include <cstddef>
#include <string>

namespace fretsheaf::benchmarks {

// Plays a recorded sheet: cairo drawing it as a PDF, with fonts opened by FreeType, and nothing else. Returns the size
// of the PDF in bytes. The recording is read with strtod as it is drawn.
std::size_t bare_draw(const std::string& recording);

}  // namespace fretsheaf::benchmarks
