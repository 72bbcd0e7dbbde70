#pragma once

#include <string_view>
#include <utility>
#include <vector>

#include "lesson/grid_rows.h"
#include "lesson/music.h"

namespace fretsheaf::lesson {

// A bar-line sign of a count row and the columns that it covers: [begin, end).
struct Sign {
  int begin = 0;
  int end = 1;
  BarSign sign = BarSign::plain;
  bool supposed = false;  // not written where it should be, which was reported
};

// The signs of a count row, from its first to the one that closes its last bar. What is left out or mistyped is
// reported, and supposed where the other rows have their bar lines.
std::vector<Sign> read_signs(const GridInput& input, const Strip& strip, const GridRow& count);

// The sign at a strip's border, where one strip ends with `end` and the next begins with `begin`.
BarSign joined_sign(BarSign end, BarSign begin);

// `|` and `:`
bool is_sign_character(char32_t c);

// The last column that is not blank; 0 where there is none.
int last_ink(const GridRow& row);

// What is said of a bar line of the count row that stands beside those of all others, and the way out.
inline constexpr std::pair<std::string_view, std::string_view> out_of_line = {
    "this bar line of the count row is out of line with the other rows",
    "put it over theirs: columns are counted from each row's first `|`"};

}  // namespace fretsheaf::lesson
