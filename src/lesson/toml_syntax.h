#pragma once

#include <cstddef>

#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::lesson {

// What is said of `[example]`, whether the file can be read or not.
struct HeadingSlip {
  const char* message;
  const char* help;
};
inline constexpr HeadingSlip example_heading = {"an example begins with [[example]]",
                                                "write it with two brackets on each side"};

// Reports why a file is no TOML, as one error. Looks for the usual slips (an unclosed quote, a text without quotes,
// typographic quotes, a missing `=`, a key written twice …) from the top, and falls back on `stopped`, the byte where
// reading gave up. REQUIRES: the text is no TOML, and its depth is guarded.
void explain_syntax(const source::Text& text, source::FileId file, std::size_t stopped,
                    source::Diagnostics& diagnostics);

}  // namespace fretsheaf::lesson
