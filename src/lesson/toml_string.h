#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "source/range.h"
#include "source/text.h"
#include "source/toml_string.h"

// What TOML's strings say and where each byte of it was written. The parser gives values without that map, and a grid
// or a `{{…}}` needs it.
namespace fretsheaf::lesson {

using source::find_toml_string;
using source::quote_marks;
using source::Quotes;
using source::TomlString;

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
