#pragma once

#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::lesson {

// Whether the file may be given to the parser: looks through its bytes once, without recursion, and reports a key or a
// value that goes deeper than `limits::nesting`, and a character beyond ASCII outside of texts and comments (TOML 1.0
// has none there, and the parser's behaviour is undefined for some).
bool guard_toml(const source::Text& text, source::FileId file, source::Diagnostics& diagnostics);

// Whether the bytes may be made a Text that is parsed: not too large, UTF-8, no NUL. `shown` is what a Text may hold in
// any case: the same bytes where all is well, else ASCII in place of what is wrong, with the same offsets.
struct SoundBytes {
  std::string shown;
  source::Diagnostics diagnostics;
};
SoundBytes check_bytes(std::string bytes, std::size_t limit, source::FileId file);

}  // namespace fretsheaf::lesson
