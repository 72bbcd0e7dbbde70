#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace fretsheaf::source {

// One code point at the front of some bytes. `length` is how many bytes it takes; where the bytes are no code point it
// is 1 and `code_point` is U+FFFD, so that a loop over any bytes comes to an end.
struct CodePoint {
  char32_t code_point = U'\uFFFD';
  std::size_t length = 1;
  bool valid = false;
};

// Strict, as RFC 3629 has it: no overlong forms, no surrogates, nothing above U+10FFFF. REQUIRES: !bytes.empty().
CodePoint decode_utf8(std::string_view bytes);

// The offset of the first byte that begins no valid code point; nullopt where all is valid.
std::optional<std::size_t> first_invalid_utf8(std::string_view bytes);
inline bool is_valid_utf8(std::string_view bytes) {
  return !first_invalid_utf8(bytes);
}

// Appends the code point's one to four bytes. A surrogate or a number above U+10FFFF is appended as U+FFFD.
void append_utf8(std::string& out, char32_t code_point);

// All of them. A byte that belongs to none becomes U+FFFD; back it is written so.
std::u32string from_utf8(std::string_view bytes);
std::string to_utf8(std::u32string_view text);

// How many code points there are; each byte that belongs to none counts as one.
std::size_t count_code_points(std::string_view bytes);

// Whether it could change a terminal, or the columns of a line: C0 but the tab, DEL, C1.
bool is_control(char32_t code_point);

// One line with U+FFFD for each control character: names of files from strangers go to a terminal by this.
std::string printable(std::string_view line);

}  // namespace fretsheaf::source
