#pragma once

#include <string>
#include <vector>

#include "lesson/grid_bar_lines.h"
#include "lesson/grid_draft.h"
#include "lesson/grid_writer.h"

namespace fretsheaf::lesson {

// A note's token in its row, its grace notes taken in: where it begins, and where its frets' digits do.
struct Token {
  int begin = 0;
  std::vector<int> graces;  // columns of their digits, in order
};
Token token_of(const NoteDraft& draft);

// A token or word of a row as it is to stand. Columns are those of the strip as it was written.
struct RowItem {
  std::u32string text;
  int anchor = 0;     // the column that it moves with
  int offset = 0;     // where it begins, from there
  int boundary = 0;   // columns can be put in before this one to make room for it
  int least = 0;      // a column that it may not begin before: of a grace note, where the count before it ends
  int cell = 0;       // index of its bar in the strip
  int old_begin = 0;  // where it stood in this row; -1 where it stood in another
  int old_end = 0;
  bool changed = false;
};

// A row of a strip to be written anew, or one that was not there.
struct RowPlan {
  const GridRow* row = nullptr;
  int string = 0;               // of string rows
  std::vector<RowItem> items;   // by column
  std::vector<RowItem> erased;  // what stood there, by column
  bool changed = false;
};

// What the rows of one strip are to hold: those of strings first, by string (all strings of the neck, so that one may
// be empty and have no row), then the others that have a changed word. `bars` are the strip's own.
std::vector<RowPlan> plan_rows(const GridInput& input, const Strip& strip, const StripCells& cells,
                               const std::vector<const BarDraft*>& bars, const GridChange& change);

}  // namespace fretsheaf::lesson
