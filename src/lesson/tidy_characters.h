#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace fretsheaf::lesson {

// Characters that a word processor or a web page put in place of those of the keyboard.
enum class Lookalike { quote, bar_line, dash, tab };

// How many of one kind were put right, and where the first stood.
struct Mended {
  Lookalike kind = Lookalike::quote;
  std::size_t at = 0;  // an offset in the text before
  int number = 0;
};

// A grid with its curly quotes, long dashes and bar lines of other alphabets written as the keyboard has them, each for
// one character, so that no column moves. Words inside quotes stay as they are.
std::string with_plain_characters(std::string_view grid, std::vector<Mended>& mended);

// A lesson file that is no TOML, with the curly quotes around its values straightened, where both are on one line and
// nothing between them needs a guess; and quotes of three.
std::string with_straight_quotes(std::string_view file, std::vector<Mended>& mended);

}  // namespace fretsheaf::lesson
