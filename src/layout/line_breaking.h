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
  bool follows = false;  // it takes the stretch of the line before (a short last line): no cost between the two
};

// The lines that may begin at each piece, by that piece.
using Choices = std::vector<std::vector<LineChoice>>;

// The lines of least cost that hold all pieces in order; the cost between two lines is `unevenness` times the square of
// the difference of their tightness. Empty where no choices reach the end.
std::vector<LineChoice> cheapest(const Choices& choices, double unevenness);

}  // namespace fretsheaf::layout
