#include "lesson/grid_text.h"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

#include "lesson/grid_rows_text.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {

namespace {

constexpr std::size_t most_bars_a_strip = 4;
constexpr int widest_strip = 110;

std::string sign_text(BarSign sign) {
  switch (sign) {
    case BarSign::doubled:
      return "||";
    case BarSign::repeat_begin:
      return "|:";
    case BarSign::repeat_end:
      return ":|";
    case BarSign::repeat_both:
      return ":|:";
    case BarSign::plain:
    case BarSign::final:
      break;
  }
  return "|";
}

std::string padded(const std::string& text, int width) {
  const int missing = width - static_cast<int>(source::count_code_points(text));
  return text + std::string(static_cast<std::size_t>(std::max(missing, 0)), ' ');
}

// A bar's cells before they are put side by side.
struct BarText {
  std::vector<std::string> cells;  // by row
  int width = 0;
};

class GridText {
 public:
  GridText(const Music& music, const fretboard::Neck& neck) : music_(music), rows_(music, neck) {}

  std::string write() {
    for (std::size_t i = 0; i < music_.bars.size(); ++i) bars_.push_back(bar_text(i));
    std::string grid;
    for (std::size_t first = 0; first < bars_.size();) {
      const std::size_t last = strip_end(first);
      if (first > 0) grid += "\n";
      grid += strip(first, last);
      first = last;
    }
    return grid;
  }

 private:
  BarText bar_text(std::size_t index) const {
    std::vector<GridColumn> columns = rows_.columns(index);
    BarText text;
    text.width = set_out(columns);
    text.cells.assign(rows_.size(), {});
    for (std::size_t row = 0; row < rows_.size(); ++row) text.cells[row] = cell(index, row, columns, text.width);
    return text;
  }

  // Gives every column its place, one blank apart; the width of the bar.
  static int set_out(std::vector<GridColumn>& columns) {
    int x = 1;
    for (GridColumn& column : columns) {
      int left = 0;
      int right = static_cast<int>(column.count.size());
      for (const auto& [row, token] : column.tokens) {
        left = std::max(left, token.before);
        right = std::max(right, static_cast<int>(source::count_code_points(token.text)) - token.before);
      }
      column.x = x + left;
      x = column.x + right + 1;
    }
    return x;
  }

  std::string cell(std::size_t index, std::size_t row, const std::vector<GridColumn>& columns, int width) const {
    std::string text;
    int written = 0;
    const auto put = [&](int x, const std::string& token) {
      text += std::string(static_cast<std::size_t>(x - written), ' ') + token;
      written = x + static_cast<int>(source::count_code_points(token));
    };
    for (const GridColumn& column : columns) {
      if (row == GridRows::count_row) put(column.x, column.count);
      const auto token = column.tokens.find(row);
      if (token != column.tokens.end()) put(column.x - token->second.before, token->second.text);
    }
    if (std::string dashes = rows_.dashes(index, row, columns, width); !dashes.empty()) return dashes;
    put(width, "");
    return text;
  }

  std::size_t strip_end(std::size_t first) const {
    std::size_t last = first;
    int width = 0;
    while (last < bars_.size() && last - first < most_bars_a_strip) {
      width += bars_[last].width + 1;
      if (last > first && width > widest_strip) break;
      ++last;
    }
    return last;
  }

  std::string strip(std::size_t first, std::size_t last) const {
    const std::vector<std::size_t> used = rows_.used(first, last);
    int label_width = 0;
    for (const std::size_t row : used) {
      label_width = std::max(label_width, static_cast<int>(rows_.label(row).size()));
    }
    std::string text;
    for (const std::size_t row : used) {
      std::string line =
          padded(rows_.label(row), label_width + 1) + line_sign(row, first == 0 ? music_.left : BarSign::plain);
      for (std::size_t bar = first; bar < last; ++bar) {
        line += bars_[bar].cells[row] + line_sign(row, music_.bars[bar].right);
      }
      line.erase(line.find_last_not_of(' ') + 1);
      text += line + "\n";
    }
    return text;
  }

  // Other rows have a plain bar line under the count row's sign.
  static std::string line_sign(std::size_t row, BarSign sign) {
    const std::string text = sign_text(sign);
    return row == GridRows::count_row ? text : padded("|", static_cast<int>(text.size()));
  }

  const Music& music_;
  GridRows rows_;
  std::vector<BarText> bars_;
};

}  // namespace

std::string grid_text(const Music& music, const fretboard::Neck& neck) {
  return GridText(music, neck).write();
}

bool can_count(Rational at, const theory::Meter& meter) {
  constexpr int finest = 64;
  return at >= Rational(0) && (at / meter.count()).denominator() <= finest;
}

}  // namespace fretsheaf::lesson
