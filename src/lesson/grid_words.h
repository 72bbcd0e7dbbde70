#pragma once

#include <string>
#include <vector>

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// A word of a cell: a run without blanks, or what stands in quotes.
struct CellWord {
  std::string text;  // without quotes
  bool quoted = false;
  int begin = 0;  // columns, quotes included
  int end = 0;
  Range range;  // of the text
};

std::vector<CellWord> read_words(const GridInput& input, const Cell& cell);

// Reports curly quotes, which no keyboard row means; true where it did.
bool report_curly_quotes(const GridInput& input, const Cell& cell, const CellWord& word);

// Chord, text, lyric, section, ending, meter and road rows: words at a moment.
void read_word_cell(const GridInput& input, const Cell& cell, int bar_index, GridDraft& draft);

}  // namespace fretsheaf::lesson
