#include "lesson/grid_signs.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "lesson/grid_phrases.h"
#include "lesson/limits.h"

namespace fretsheaf::lesson {

using source::Code;

bool is_sign_character(char32_t c) {
  return c == U'|' || c == U':';
}

int last_ink(const GridRow& row) {
  int column = row.columns() - 1;
  while (column > 0 && is_blank(row.at(column))) --column;
  return column;
}

namespace {

constexpr std::array<std::pair<std::u32string_view, BarSign>, 5> signs = {{
    {U"|", BarSign::plain},
    {U"||", BarSign::doubled},
    {U"|:", BarSign::repeat_begin},
    {U":|", BarSign::repeat_end},
    {U":|:", BarSign::repeat_both},
}};

BarSign repeat_sign(bool end, bool begin) {
  if (end) return begin ? BarSign::repeat_both : BarSign::repeat_end;
  return begin ? BarSign::repeat_begin : BarSign::doubled;
}

// The sign that a run of their characters was meant to be, with one of each where several stand: `:|` of `:||`; empty
// where that is none.
std::string meant_sign(std::u32string_view written) {
  if (written.find(U':') == std::u32string_view::npos) return "||";
  std::u32string once;
  for (const char32_t c : written) {
    if (once.empty() || once.back() != c) once += c;
  }
  const bool known = std::any_of(signs.begin(), signs.end(), [&](const auto& sign) { return sign.first == once; });
  return known ? std::string(once.begin(), once.end()) : std::string();
}

// The sign that is written, or the one that was most probably meant, which is reported.
BarSign sign_of(const GridInput& input, const GridRow& row, int begin, int end) {
  const std::u32string_view written =
      std::u32string_view(row.characters)
          .substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin));
  for (const auto& [text, sign] : signs) {
    if (text == written) return sign;
  }
  const std::string meant = meant_sign(written);
  input.diagnostics.error(
      Code::bar_line_unknown, row.range(begin, end), tick(row.text(begin, end)) + " is no bar-line sign",
      (meant.empty() ? "" : "write " + tick(meant) + ": ") + "the signs are `|`, `||`, `|:`, `:|` and `:|:`");
  return repeat_sign(written.front() == U':', written.back() == U':');
}

std::vector<Sign> find_signs(const GridInput& input, const GridRow& row) {
  std::vector<Sign> found;
  const int ink = last_ink(row);
  for (int column = 0; column < row.columns(); ++column) {
    if (!is_sign_character(row.at(column))) continue;
    int end = column;
    bool stroke = false;
    for (; end < row.columns() && is_sign_character(row.at(end)); ++end) stroke = stroke || row.at(end) == U'|';
    if (stroke) {
      found.push_back({column, end, sign_of(input, row, column, end), false});
    } else {
      input.diagnostics.error(
          Code::bar_line_unknown, row.range(column, end),
          tick(row.text(column, end)) + " stands apart from its bar line",
          end > ink ? "write `:|` to end a repeat" : "join them: `:|` ends a repeat, `|:` begins one");
      // At the row's end its stroke is what is missing.
      if (end > ink) found.push_back({column, end + 1, BarSign::repeat_end, true});
    }
    column = end - 1;
  }
  return found;
}

// Whether every row that reaches so far has a bar line in those columns, and there are so many of them at least.
bool all_have_bar_line(const Strip& strip, int begin, int end, int least = 2) {
  int having = 0;
  for (const GridRow& row : strip.rows) {
    if (row.kind == RowKind::count || row.columns() <= begin) continue;
    const auto columns = std::u32string_view(row.characters).substr(static_cast<std::size_t>(begin));
    if (columns.substr(0, static_cast<std::size_t>(end - begin)).find(U'|') == std::u32string_view::npos) return false;
    ++having;
  }
  return having >= least;
}

// Whether a character that stands alone is neither of those that counts are written in nor a bar line.
bool stands_for_bar_line(const GridRow& row, int column) {
  constexpr std::u32string_view of_counts = U"0123456789&+ea(%|:";
  return !is_blank(row.at(column)) && of_counts.find(row.at(column)) == std::u32string_view::npos &&
         is_blank(row.at(column - 1)) && is_blank(row.at(column + 1));
}

// A key beside the right one, where all other rows have their bar line: said, and read as if it were one.
void read_mistyped(const GridInput& input, const Strip& strip, const GridRow& row, std::vector<Sign>& found) {
  const auto written = static_cast<std::ptrdiff_t>(found.size());
  for (int column = 1; column < row.columns(); ++column) {
    if (!stands_for_bar_line(row, column) || !all_have_bar_line(strip, column, column + 1, 1)) continue;
    input.diagnostics.error(Code::bar_line_unknown, row.range(column, column + 1),
                            tick(row.text(column, column + 1)) + " stands where the rows under it have their bar line",
                            "write `|` here, or take theirs out");
    found.push_back({column, column + 1, BarSign::plain, true});
  }
  std::inplace_merge(found.begin(), found.begin() + written, found.end(),
                     [](const Sign& a, const Sign& b) { return a.begin < b.begin; });
}

// Where the other rows close the bar that the count row leaves open.
int likely_close(const Strip& strip, int from) {
  int likely = from;
  for (const GridRow& row : strip.rows) {
    for (int column = from; column < row.columns(); ++column) {
      if (row.at(column) == U'|') return column;
      if (!is_blank(row.at(column))) likely = std::max(likely, column + 1);
    }
  }
  return likely;
}

// A count row whose last bar is open is read as if it were closed.
void close_last_bar(const GridInput& input, const Strip& strip, const GridRow& row, std::vector<Sign>& found) {
  const int ink = last_ink(row);
  if (ink < found.back().end) {
    if (found.size() > 1) return;
    input.diagnostics.error(Code::bar_not_closed, row.range(0, found.back().end), "this count row has no bars",
                            "write the counts of each bar and a bar line after them: `count | 1 2 3 4 |`");
    return;
  }
  input.diagnostics.error(Code::bar_not_closed, row.range(ink, ink + 1), "the last bar of the count row is not closed",
                          "end the row with a bar line, `|`");
  const int close = likely_close(strip, ink + 1);
  found.push_back({close, close + 1, BarSign::plain, true});
}

// Whether the sign before has slipped to the left of where the other rows have their bar line, with nothing between.
bool is_slipped(const Strip& strip, const GridRow& row, const Sign& before, int column) {
  if (before.begin == 0 || all_have_bar_line(strip, before.begin, before.end)) return false;
  for (int between = before.end; between < column; ++between) {
    if (!is_blank(row.at(between))) return false;
  }
  return true;
}

// A sign with its stroke at `column`, where those of the other rows stand.
void move_to(Sign& sign, int column) {
  const int colon = sign.end - sign.begin - 1;
  sign.begin = ends_repeat(sign.sign) ? column - colon : column;
  sign.end = ends_repeat(sign.sign) ? column + 1 : column + 1 + colon;
  sign.supposed = true;
}

// Where all other rows have a bar line and the count row has none, it was left out there: said once, and then read as
// if it were written.
void suppose_bar_lines(const GridInput& input, const Strip& strip, const GridRow& row, std::vector<Sign>& found) {
  const std::vector<Sign> written = std::exchange(found, {});
  for (const Sign& next : written) {
    // Where the next sign has no bar lines under it, the count row has slipped.
    const bool sure = next.supposed || all_have_bar_line(strip, next.begin, next.end);
    for (int column = found.empty() ? next.begin : found.back().end; sure && column < next.begin; ++column) {
      if (!is_blank(row.at(column)) || !all_have_bar_line(strip, column, column + 1)) continue;
      if (is_slipped(strip, row, found.back(), column)) {
        input.diagnostics.error(Code::bar_line_misplaced, row.range(found.back().begin, found.back().end),
                                std::string(out_of_line.first), std::string(out_of_line.second));
        move_to(found.back(), column);
        continue;
      }
      input.diagnostics.error(Code::bar_line_left_out, row.range(column, column + 1),
                              "the count row has no bar line here, where the rows under it have one",
                              "write `|` here, or take theirs out");
      found.push_back({column, column + 1, BarSign::plain, true});
    }
    found.push_back(next);
  }
}

}  // namespace

std::vector<Sign> read_signs(const GridInput& input, const Strip& strip, const GridRow& count) {
  std::vector<Sign> found = find_signs(input, count);
  if (!count.shifted) read_mistyped(input, strip, count, found);
  close_last_bar(input, strip, count, found);
  if (!count.shifted) suppose_bar_lines(input, strip, count, found);
  // One bar more than an example holds is enough to say that it is too long.
  found.resize(std::min(found.size(), limits::bars + 2));
  return found;
}

BarSign joined_sign(BarSign end, BarSign begin) {
  const bool ends = ends_repeat(end) || ends_repeat(begin);
  const bool begins = begins_repeat(end) || begins_repeat(begin);
  if (ends || begins) return repeat_sign(ends, begins);
  return end == BarSign::doubled || begin == BarSign::doubled ? BarSign::doubled : BarSign::plain;
}

}  // namespace fretsheaf::lesson
