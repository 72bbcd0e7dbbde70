#pragma once

#include <vector>

// Breaking a row of pieces into lines, optimally over all of them (dynamic programming, as Knuth and Plass break
// paragraphs: "Breaking paragraphs into lines", 1981).
namespace fretsheaf::layout {

// A line that may be: pieces `first` to `last`.
struct LineChoice {
  int first = 0;
  int last = 0;
  double tightness = 0;  // the logarithm of its stretch, as against the natural one
  double cost = 0;       // of the line by itself
  bool follows = false;  // a short last line: it takes the stretch of the line before,
  int bars = 1;          // and is judged by how many bars it has as against that one
};

// The lines that may begin at each piece, by that piece.
using Choices = std::vector<std::vector<LineChoice>>;

// What two lines in a row cost: so much times the square of the difference of their tightness; or, where the second
// follows, of the logarithm (base 2) of the ratio of their bars.
struct Unevenness {
  double of_stretch = 0;
  double of_bars = 0;
};

// The lines of least cost that hold all pieces in order. Empty where no choices reach the end.
std::vector<LineChoice> cheapest(const Choices& choices, const Unevenness& unevenness);

}  // namespace fretsheaf::layout
