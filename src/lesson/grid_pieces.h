#pragma once

#include <string>
#include <vector>

#include "lesson/grid_bar_lines.h"
#include "lesson/grid_draft.h"

// A strip taken apart into what can be moved: for setting its columns anew.
namespace fretsheaf::lesson {

// A token, a word, a count or a run of dashes in one bar of a row. Columns are counted from where the bar begins.
struct Piece {
  std::u32string text;
  int begin = 0;  // as written
  int end = 0;
  int anchor = -1;           // the count that it stands with, an index; -1 is the bar's start
  int offset = 0;            // where it is to begin, from there
  bool glued = false;        // nothing between it and the piece before
  bool drawn = false;        // goes on in dashes as far as it reaches
  bool after_count = false;  // may not begin under the count before: a grace note would become that count's note
};

// One bar of a strip, in all its rows.
struct BarPieces {
  std::vector<int> counts;  // where each begins
  int width = 0;
  std::vector<std::vector<Piece>> rows;  // the count row first, then the others in their order; empty past a row's end
};

// `bars` are the strip's own. REQUIRES: the grid was read without errors.
std::vector<BarPieces> take_apart(const GridInput& input, const StripCells& cells,
                                  const std::vector<const BarDraft*>& bars);

}  // namespace fretsheaf::lesson
