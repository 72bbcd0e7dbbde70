#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "lesson/grid.h"

namespace fretsheaf::lesson {

// What all parts of the grid reader work on.
struct GridInput {
  const source::Text& text;
  Range grid;
  const GridContext& context;
  source::Diagnostics& diagnostics;
};

enum class RowKind {
  count,
  string,
  chord,
  mark,
  text,
  lyric,
  section,
  ending,
  meter,
  road,
  finger,
  hand,
  spell,
  stroke,
  play
};

// One line of a grid, seen from its first `|` on: column 0 is that bar line, a column is a code point.
struct GridRow {
  RowKind kind = RowKind::count;
  int string = 0;   // from 1, the top line; of string rows only
  int ordinal = 0;  // which of the strip's rows of that kind it is, from 0
  Range label;
  bool shifted = false;  // a tab stands in it: where its columns lie cannot be known
  std::u32string characters;
  std::vector<std::uint32_t> offsets;  // in the file, of each column and of the row's end
  std::string_view file_bytes;
  source::FileId file = 0;

  int columns() const { return static_cast<int>(characters.size()); }
  // Past its end a row is blank.
  char32_t at(int column) const {
    return column >= 0 && column < columns() ? characters[static_cast<std::size_t>(column)] : U' ';
  }
  Range range(int begin, int end) const;
  std::string text(int begin, int end) const;
};

struct Strip {
  std::vector<GridRow> rows;  // as written; rows that cannot be told are left out
  int count_row = -1;         // an index into `rows`; -1 where there is none (which was reported)
  bool damaged = false;       // a row was left out
};

// Blanks that a grid may hold; a tab is none of them.
bool is_blank(char32_t character);

// Splits the grid into strips and rows and tells what each row is.
std::vector<Strip> read_strips(const GridInput& input);

}  // namespace fretsheaf::lesson
