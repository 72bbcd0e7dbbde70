#pragma once

#include <hb.h>

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace fretsheaf::typeface {

// A code point and the bytes that it was read from; bytes that are no UTF-8 are read as U+FFFD.
struct Character {
  char32_t code_point = 0;
  std::string_view bytes;
};
std::vector<Character> decode(std::string_view text);

// A stretch of text for one font, in one script.
struct TextRun {
  std::size_t font = 0;  // which of the list
  hb_script_t script = HB_SCRIPT_COMMON;
  std::string text;  // UTF-8
};

struct Itemized {
  std::vector<TextRun> runs;
  std::vector<char32_t> missing;  // each once, in the order met
};

// Does the font at this place of the list have the code point?
using HasCodePoint = std::function<bool(std::size_t font, char32_t code_point)>;

// Cuts a line of text into runs. A base and its combining marks go to the first font that has them all; where none
// does, each code point goes to the first that has it. Left out: what no font has, control characters and
// non-characters (all `missing`), and what is invisible by its nature (soft hyphen, zero-width space, variation
// selectors, direction marks), which is not. Zero-width joiners stay for the shaper. Of more than 30 marks on one base
// the rest is left out and missing (the limit of the Stream-Safe Text Format, Unicode Standard Annex #15).
Itemized itemize(std::string_view text, std::size_t fonts, const HasCodePoint& has);

}  // namespace fretsheaf::typeface
