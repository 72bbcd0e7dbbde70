#include "lesson/tidy_bar_lines.h"

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

#include "lesson/grid_labels.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

// A row cut at its bar lines: there is one sign more than there are cells.
struct CutRow {
  std::u32string label;
  std::vector<std::u32string> signs;
  std::vector<std::u32string> cells;
  std::u32string rest;  // after the last sign
  bool count = false;
  bool words = false;
};

bool is_filler(char32_t c) {
  return is_blank(c) || c == U'-';
}

CutRow cut(const std::u32string& line) {
  CutRow row;
  const std::size_t first = std::min(line.find(U'|'), line.size());
  row.label = line.substr(0, first);
  std::string label = source::to_utf8(row.label);
  label.erase(0, std::min(label.find_first_not_of(" \t"), label.size()));
  label.resize(label.find_last_not_of(" \t") + 1);
  const auto known = find_label(label, {});
  row.count = known && known->kind == RowKind::count;
  row.words = known && !row.count;
  bool quoted = false;
  std::u32string cell;
  for (std::size_t at = first; at < line.size();) {
    quoted = quoted != (row.words && line[at] == U'"');
    std::size_t end = at;
    while (end < line.size() && (line[end] == U'|' || line[end] == U':')) ++end;
    const std::u32string sign = line.substr(at, end - at);
    if (quoted || sign.find(U'|') == std::u32string::npos) {
      cell += line[at++];
      continue;
    }
    if (!row.signs.empty()) row.cells.push_back(std::exchange(cell, {}));
    row.signs.push_back(sign);
    at = end;
  }
  row.rest = cell;
  return row;
}

class StripAligner {
 public:
  StripAligner(std::vector<CutRow>& rows, Side side) : rows_(rows), side_(side) {}

  bool align() {
    const auto count = std::find_if(rows_.begin(), rows_.end(), [](const CutRow& row) { return row.count; });
    if (count == rows_.end()) return false;
    for (CutRow& row : rows_) {
      if (&row != &*count && !match_signs(row, *count)) return false;
    }
    for (std::size_t bar = 0; bar < count->cells.size(); ++bar) {
      std::size_t width = count->cells[bar].size();
      for (CutRow& row : rows_) {
        if (bar < row.cells.size()) width = std::max(width, trimmed(row.cells[bar], count->cells[bar].size()));
      }
      for (CutRow& row : rows_) {
        if (bar < row.cells.size()) widen(row, row.cells[bar], width);
      }
    }
    return true;
  }

 private:
  static bool match_signs(CutRow& row, const CutRow& count) {
    if (row.signs.size() > count.signs.size()) return false;
    if (std::any_of(row.rest.begin(), row.rest.end(), [](char32_t c) { return !is_blank(c); })) return false;
    for (std::size_t i = 0; i < row.signs.size(); ++i) {
      std::u32string& own = row.signs[i];
      const std::u32string& sign = count.signs[i];
      if (own.size() == sign.size()) continue;
      const bool repeat = own.find(U':') != std::u32string::npos;
      if (repeat) return false;
      own.assign(sign.size(), row.count || row.words ? U' ' : U'-');
      own[i == 0 ? 0 : sign.find(U'|')] = U'|';
    }
    return true;
  }

  // Takes away filler that reaches beyond the count row's bar; how wide the cell still is.
  std::size_t trimmed(std::u32string& cell, std::size_t width) const {
    while (cell.size() > width && is_filler(side_ == Side::left ? cell.back() : cell.front())) {
      if (side_ == Side::left) {
        cell.pop_back();
      } else {
        cell.erase(0, 1);
      }
    }
    return cell.size();
  }

  void widen(const CutRow& row, std::u32string& cell, std::size_t width) const {
    const bool dashes = !row.count && !row.words && cell.find(U'-') != std::u32string::npos;
    const std::u32string more(width - cell.size(), dashes ? U'-' : U' ');
    cell = side_ == Side::left ? cell + more : more + cell;
  }

  std::vector<CutRow>& rows_;
  Side side_;
};

class GridAligner {
 public:
  GridAligner(const std::string& grid, Side side) : grid_(grid), side_(side) {}

  std::optional<std::string> align() {
    for (std::size_t at = 0; at < grid_.size();) {
      const std::size_t end = std::min(grid_.find('\n', at), grid_.size());
      std::string_view line = std::string_view(grid_).substr(at, end - at);
      const std::string_view ending = line.ends_with('\r') ? "\r" : "";
      line.remove_suffix(ending.size());
      const std::string line_end = std::string(ending) + (end < grid_.size() ? "\n" : "");
      if (line.find('|') != std::string_view::npos) {
        rows_.push_back(cut(source::from_utf8(line)));
        line_ends_.push_back(line_end);
      } else {
        // Only a blank line may part two strips.
        if (line.find_first_not_of(" \t") != std::string_view::npos || !close_strip()) return std::nullopt;
        result_ += std::string(line) + line_end;
      }
      at = end + 1;
    }
    if (!close_strip()) return std::nullopt;
    return std::move(result_);
  }

 private:
  bool close_strip() {
    if (rows_.empty()) return true;
    if (!StripAligner(rows_, side_).align()) return false;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const CutRow& row = rows_[i];
      std::u32string line = row.label;
      for (std::size_t sign = 0; sign < row.signs.size(); ++sign) {
        if (sign > 0) line += row.cells[sign - 1];
        line += row.signs[sign];
      }
      result_ += source::to_utf8(line + row.rest) + line_ends_[i];
    }
    rows_.clear();
    line_ends_.clear();
    return true;
  }

  const std::string& grid_;
  Side side_;
  std::string result_;
  std::vector<CutRow> rows_;
  std::vector<std::string> line_ends_;
};

}  // namespace

std::optional<std::string> with_bar_lines_aligned(const std::string& grid, Side side) {
  return GridAligner(grid, side).align();
}

std::string with_tabs_expanded(const std::string& grid, int width) {
  std::string result;
  int column = 0;
  for (const char c : grid) {
    if (c == '\t') {
      const int blanks = width - column % width;
      result.append(static_cast<std::size_t>(blanks), ' ');
      column += blanks;
      continue;
    }
    result += c;
    const bool continues = (static_cast<unsigned char>(c) & 0xC0) == 0x80;
    column = c == '\n' ? 0 : column + (continues ? 0 : 1);
  }
  return result;
}

}  // namespace fretsheaf::lesson
