#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "source/range.h"
#include "source/text.h"

// TOML's four kinds of string as they stand in a file: what they say and where each byte of it was written. The parser
// gives values without that map, and a grid or a `{{…}}` needs it.
namespace fretsheaf::lesson {

enum class Quotes { basic, literal, basic_lines, literal_lines };  // "…" '…' """…""" '''…'''

std::string_view quote_marks(Quotes quotes);

struct TomlString {
  Quotes quotes = Quotes::basic;
  std::size_t begin = 0;       // of the opening quotes, bytes in the file
  std::size_t body_begin = 0;  // after them and the line end that may follow them
  std::size_t body_end = 0;
  std::size_t end = 0;  // after the closing quotes
};

// The string whose opening quote is at `begin`; nullopt where it is not closed (one of a single line: on its line).
// REQUIRES: bytes[begin] is a quote, " or '.
std::optional<TomlString> find_toml_string(std::string_view bytes, std::size_t begin);

// What the string says. REQUIRES: its escapes are sound.
std::string toml_string_value(std::string_view bytes, const TomlString& string);

// Where the bytes of a printed text stand in its file. `value` is the range of the TOML string that holds the text (the
// `range` of a Prose); where it is no string, every place is that whole range. Making one takes as long as the text is,
// asking it no time.
class TextPlaces {
 public:
  TextPlaces(const source::Text& file, source::Range value);

  source::Range range(std::size_t begin, std::size_t end) const;  // of the bytes [begin, end)

 private:
  struct Place {
    std::uint32_t begin = 0;
    std::uint32_t end = 0;
  };
  source::Range value_;
  std::vector<Place> places_;  // of each byte of the text
  std::uint32_t start_ = 0;    // of the string's body
  std::uint32_t end_ = 0;      // and its end; 0 where it is no string
};

// The same for a single place.
source::Range place_in_text(const source::Text& file, source::Range value, std::size_t begin, std::size_t end);

}  // namespace fretsheaf::lesson
