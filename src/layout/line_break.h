#pragma once

#include <vector>

namespace fretsheaf::layout {

// What a paragraph is broken between: a stretch of text up to the next place where a line may end.
struct Piece {
  double width = 0;  // without the spaces at its end
  double space = 0;  // of those spaces; dropped where a line ends after it
  bool must_end = false;
};

// Total-fit, ragged right: for each line the index of its first piece. The sum over lines of the squared share left
// free is least; the last line (and one before a forced end) may be short, but not a lone scrap. A piece wider than
// `width` gets a line of its own. REQUIRES: !pieces.empty().
std::vector<int> break_lines(const std::vector<Piece>& pieces, double width);

}  // namespace fretsheaf::layout
