#include "lesson/grid_bar_lines.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "lesson/grid_phrases.h"
#include "lesson/limits.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

// Which columns of a row lie in quotes. An unclosed quote is reported, and then no column does.
std::vector<bool> quoted_columns(const GridInput& input, const GridRow& row, bool& unclosed) {
  std::vector<bool> quoted(static_cast<std::size_t>(row.columns()), false);
  if (row.kind == RowKind::string || row.kind == RowKind::count) return quoted;
  std::vector<int> quotes;
  for (int column = 0; column < row.columns(); ++column) {
    if (row.at(column) == U'"') quotes.push_back(column);
  }
  if (quotes.size() % 2 != 0) {
    // The one whose partner lies beyond a bar line is the likeliest.
    int odd = quotes.back();
    for (std::size_t i = 0; i + 1 < quotes.size(); i += 2) {
      const auto from = static_cast<std::size_t>(quotes[i]);
      if (row.characters.substr(from, static_cast<std::size_t>(quotes[i + 1]) - from).find(U'|') ==
          std::u32string::npos)
        continue;
      odd = quotes[i];
      break;
    }
    input.diagnostics.error(Code::quote_not_closed, row.range(odd, odd + 1), "this quote is never closed",
                            "write `\"` after the words, too");
    unclosed = true;
    return quoted;
  }
  for (std::size_t i = 0; i < quotes.size(); i += 2) {
    std::fill(quoted.begin() + quotes[i], quoted.begin() + quotes[i + 1] + 1, true);
  }
  return quoted;
}

// One row held to the signs.
class RowAlignment {
 public:
  RowAlignment(const GridInput& input, const GridRow& row, const std::vector<Sign>& found)
      : input_(input), row_(row), signs_(found) {
    cells_.row = &row;
    last_ink_ = last_ink(row);
    quoted_ = quoted_columns(input, row, damaged_);
    damaged_ = damaged_ || row.shifted;
  }

  RowCells align() {
    const auto bars = signs_.size() - 1;
    for (std::size_t bar = 0; bar < bars; ++bar) {
      if (!damaged_ && is_empty_from(signs_[bar].end)) break;
      cells_.cells.push_back({&row_, signs_[bar].end, signs_[bar + 1].begin, damaged_});
      if (damaged_) continue;
      if (!signs_[bar + 1].supposed && !bar_line_in(signs_[bar + 1].begin, signs_[bar + 1].end)) {
        misplaced_ = static_cast<int>(bar) + 1;
        cells_.cells.back().damaged = true;
        damaged_ = true;
        continue;
      }
      check_strays(cells_.cells.back());
    }
    if (!damaged_) {
      check_signs();
      check_end();
    }
    return std::move(cells_);
  }

  // The first sign under which the row has no bar line; 0 where all is well.
  int misplaced() const { return misplaced_; }
  // The bar line that probably belongs there.
  std::optional<int> own_bar_line() const {
    const int from = signs_[static_cast<std::size_t>(misplaced_) - 1].end;
    return bar_line_in(from, row_.columns());
  }

  // Whether that bar line stands under a later sign: then it is right, and the one before it was left out.
  bool leaves_out_bar_line() const {
    const auto sign = signs_.begin() + misplaced_;
    const auto own = own_bar_line();
    if (!own || is_quoted(sign->begin)) return false;
    return std::any_of(sign + 1, signs_.end(), [&](const Sign& one) { return *own >= one.begin && *own < one.end; });
  }

  source::Diagnostic misplacement() const {
    const Sign& sign = signs_[static_cast<std::size_t>(misplaced_)];
    const auto own = own_bar_line();
    constexpr auto error = source::Severity::error;
    if (!own) {
      return {error, Code::bar_not_closed, row_.range(last_ink_, last_ink_ + 1), "this row's last bar is not closed",
              "end it with a bar line, `|`, under the count row's"};
    }
    if (leaves_out_bar_line()) {
      return {error, Code::bar_line_left_out, row_.range(sign.begin, sign.begin + 1),
              "this row has no bar line here, where the count row has one", "write `|` in this column"};
    }
    const int off = *own < sign.begin ? *own - sign.begin : *own - sign.end + 1;
    const std::string columns = number_phrase(static_cast<std::size_t>(off < 0 ? -off : off), "column");
    return {error, Code::bar_line_misplaced, row_.range(*own, *own + 1),
            "this bar line stands " + columns + " too far to the " + (off < 0 ? "left" : "right"),
            "put it under the count row's: columns are counted from each row's first `|`"};
  }

 private:
  // The count row's columns may lie beyond this row's end.
  bool is_quoted(int column) const { return column < row_.columns() && quoted_[static_cast<std::size_t>(column)]; }

  std::optional<int> bar_line_in(int begin, int end) const {
    for (int column = begin; column < std::min(end, row_.columns()); ++column) {
      if (row_.at(column) == U'|' && !is_quoted(column)) return column;
    }
    return std::nullopt;
  }

  bool is_empty_from(int column) const { return last_ink_ < column; }

  void check_strays(Cell& cell) {
    const auto stray = bar_line_in(cell.begin, cell.end);
    if (!stray) return;
    cell.damaged = true;
    input_.diagnostics.error(Code::bar_line_misplaced, row_.range(*stray, *stray + 1),
                             "there is no bar line here in the count row",
                             "take it out, or write it in the count row, too");
  }

  bool is_filler(int column) const {
    return is_blank(row_.at(column)) || row_.at(column) == U'-' || is_sign_character(row_.at(column));
  }

  // Dots of old tabs, where no word or fret touches them.
  bool is_ornament(int column, const Sign& sign) const {
    const char32_t c = row_.at(column);
    if (row_.kind != RowKind::string || (c != U'.' && c != U'*' && c != U'o')) return false;
    return (column > sign.begin || is_filler(column - 1)) && (column + 1 < sign.end || is_filler(column + 1));
  }

  // Signs may be wider than `|`: a word or a fret under one would be lost.
  void check_signs() {
    for (std::size_t i = 0; i <= cells_.cells.size(); ++i) {
      const Sign& sign = signs_[i];
      for (int column = sign.begin; column < sign.end; ++column) {
        if (is_filler(column) || is_ornament(column, sign)) continue;
        report_under_sign(i, column);
        break;
      }
    }
  }

  void report_under_sign(std::size_t i, int column) {
    const auto part_of_word = [&](int at) { return !is_blank(row_.at(at)) && !is_sign_character(row_.at(at)); };
    int begin = column;
    int end = column + 1;
    while (begin > 0 && part_of_word(begin - 1)) --begin;
    while (end < row_.columns() && part_of_word(end)) ++end;
    input_.diagnostics.error(Code::bar_line_covered, row_.range(begin, end),
                             tick(row_.text(begin, end)) + " reaches under a bar-line sign of the count row",
                             "leave the columns of the sign free");
    if (i > 0) cells_.cells[i - 1].damaged = true;
    if (i < cells_.cells.size()) cells_.cells[i].damaged = true;
  }

  void check_end() {
    const int end = signs_.back().end;
    // A count row without bars was reported; one with too many will be.
    if (is_empty_from(end) || signs_.size() == 1 || signs_.size() == limits::bars + 2) return;
    int begin = end;
    while (is_blank(row_.at(begin))) ++begin;
    input_.diagnostics.error(Code::bar_without_count, row_.range(begin, last_ink_ + 1),
                             "this row goes on where the count row has ended",
                             "write the counts of these bars, too, or take them out");
  }

  const GridInput& input_;
  const GridRow& row_;
  const std::vector<Sign>& signs_;
  RowCells cells_;
  std::vector<bool> quoted_;
  int last_ink_ = 0;
  bool damaged_ = false;
  int misplaced_ = 0;
};

// Where every other row differs in the same way, it is the count row that slipped: the sign that did; 0 where none.
int slipped_sign(const std::vector<RowAlignment>& rows) {
  if (rows.size() < 2) return 0;
  const int sign = rows.front().misplaced();
  if (sign == 0) return 0;
  const auto column = rows.front().own_bar_line();
  if (!column) return 0;
  const bool all = std::all_of(rows.begin(), rows.end(), [&](const RowAlignment& row) {
    return row.misplaced() == sign && row.own_bar_line() == column;
  });
  return all ? sign : 0;
}

// A sign of the count row alone. One too many is said at once; what moves one may be a count that was left out before
// it.
void find_misplaced_sign(const GridInput& input, const GridRow& count, bool too_many, int sign, StripCells& result) {
  const Sign& here = result.signs[static_cast<std::size_t>(sign)];
  const Range range = count.range(here.begin, here.end);
  if (too_many) {
    input.diagnostics.error(Code::bar_line_misplaced, range, "none of the rows under this bar line has one here",
                            "take it out, or write it in them, too");
    result.slipped = sign;
  } else {
    result.misplaced.emplace_back(static_cast<std::size_t>(sign) - 1,
                                  source::Diagnostic{source::Severity::error, Code::bar_line_misplaced, range,
                                                     std::string(out_of_line.first), std::string(out_of_line.second)});
  }
}

}  // namespace

StripCells read_cells(const GridInput& input, const Strip& strip) {
  StripCells result;
  const GridRow& count = strip.rows[static_cast<std::size_t>(strip.count_row)];
  result.signs = read_signs(input, strip, count);
  result.count.row = &count;
  for (std::size_t bar = 0; bar + 1 < result.signs.size(); ++bar) {
    result.count.cells.push_back({&count, result.signs[bar].end, result.signs[bar + 1].begin, count.shifted});
  }
  std::vector<RowAlignment> rows;
  rows.reserve(strip.rows.size());
  for (const GridRow& row : strip.rows) {
    // Under a count row that a tab has shifted nothing can be in its place.
    if (&row == &count || count.shifted) continue;
    rows.emplace_back(input, row, result.signs);
    result.rows.push_back(rows.back().align());
  }
  if (const int sign = slipped_sign(rows); sign > 0) {
    find_misplaced_sign(input, count, rows.front().leaves_out_bar_line(), sign, result);
    return result;
  }
  for (const RowAlignment& row : rows) {
    if (row.misplaced() > 0)
      result.misplaced.emplace_back(static_cast<std::size_t>(row.misplaced()) - 1, row.misplacement());
  }
  return result;
}

}  // namespace fretsheaf::lesson
