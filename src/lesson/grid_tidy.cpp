#include "lesson/grid_tidy.h"

#include <algorithm>
#include <limits>
#include <vector>

#include "lesson/grid_columns.h"
#include "source/edit.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

// What all strips of a grid have in common.
struct GridStyle {
  std::size_t indent = 0;  // of its labels
  std::size_t label = 0;   // columns from there to the first bar line; 0 where all lie in line as they are
  char32_t filler = U' ';  // of string rows
};

std::size_t line_begin(const std::string& grid, std::size_t at) {
  const std::size_t before = at == 0 ? std::string::npos : grid.rfind('\n', at - 1);
  return before == std::string::npos ? 0 : before + 1;
}

std::string label_of(const std::string& grid, const GridRow& row) {
  return grid.substr(row.label.begin, row.label.end - row.label.begin);
}

std::size_t columns_between(const std::string& grid, std::size_t begin, std::size_t end) {
  return source::count_code_points(grid.substr(begin, end - begin));
}

// Bar lines that stand under each other stay where they are; else they go just after the widest label.
std::size_t label_columns(const std::string& grid, const std::vector<Strip>& strips) {
  std::size_t widest = 0;
  std::size_t least = std::numeric_limits<std::size_t>::max();
  std::size_t most = 0;
  for (const Strip& strip : strips) {
    for (const GridRow& row : strip.rows) {
      widest = std::max(widest, columns_between(grid, row.label.begin, row.label.end));
      const std::size_t bar_line = columns_between(grid, line_begin(grid, row.label.begin), row.offsets.front());
      least = std::min(least, bar_line);
      most = std::max(most, bar_line);
    }
  }
  return least == most ? 0 : widest + 1;
}

GridStyle style_of(const std::string& grid, const std::vector<Strip>& strips) {
  GridStyle style;
  style.indent = std::numeric_limits<std::size_t>::max();
  style.label = label_columns(grid, strips);
  std::ptrdiff_t dashes = 0;
  for (const Strip& strip : strips) {
    for (const GridRow& row : strip.rows) {
      style.indent = std::min(style.indent, columns_between(grid, line_begin(grid, row.label.begin), row.label.begin));
      if (row.kind != RowKind::string) continue;
      dashes += std::count(row.characters.begin(), row.characters.end(), U'-');
      dashes -= std::count_if(row.characters.begin(), row.characters.end(), is_blank);
    }
  }
  style.filler = dashes > 0 ? U'-' : U' ';
  return style;
}

// Writes the rows of one strip.
class StripSetter {
 public:
  StripSetter(const GridInput& input, const StripCells& cells, const std::vector<const BarDraft*>& bars,
              const GridStyle& style)
      : cells_(cells), style_(style), bars_(take_apart(input, cells, bars)) {
    for (const BarPieces& bar : bars_) columns_.push_back(set_columns(bar));
  }

  // By row, the count row first: what it holds from its first bar line on.
  std::vector<std::u32string> write() const {
    std::vector<std::u32string> rows = {written(cells_.count, 0)};
    for (std::size_t i = 0; i < cells_.rows.size(); ++i) rows.push_back(written(cells_.rows[i], i + 1));
    return rows;
  }

 private:
  char32_t filler_of(const GridRow& row) const { return row.kind == RowKind::string ? style_.filler : U' '; }

  std::u32string written(const RowCells& row, std::size_t index) const {
    std::u32string text = sign_in(*row.row, 0);
    for (std::size_t bar = 0; bar < row.cells.size(); ++bar) {
      text += cell(*row.row, index, bar) + sign_in(*row.row, bar + 1);
    }
    // After the last bar line there is nothing.
    while (text.back() == U' ' || (text.back() == U'-' && row.row->kind == RowKind::string)) text.pop_back();
    return text;
  }

  std::u32string cell(const GridRow& row, std::size_t index, std::size_t bar) const {
    const BarColumns& columns = columns_[bar];
    std::u32string text(static_cast<std::size_t>(columns.width), filler_of(row));
    for (std::size_t i = 0; i < columns.pieces[index].size(); ++i) {
      const Piece& piece = bars_[bar].rows[index][i];
      const auto [begin, end] = columns.pieces[index][i];
      if (piece.drawn) std::fill(text.begin() + begin, text.begin() + end, U'-');
      std::copy(piece.text.begin(), piece.text.end(), text.begin() + begin);
    }
    return text;
  }

  // What a row has under a sign: a lone stroke goes under the sign's own, and signs of its own stay.
  std::u32string sign_in(const GridRow& row, std::size_t index) const {
    const Sign& sign = cells_.signs[index];
    const auto width = static_cast<std::size_t>(sign.end - sign.begin);
    const auto begin = static_cast<std::size_t>(sign.begin);
    std::u32string under = row.characters.substr(std::min(begin, row.characters.size()), width);
    if (row.kind == RowKind::count) return under;
    under.resize(width, U' ');
    const auto is_empty = [](char32_t c) { return is_blank(c) || c == U'-'; };
    for (char32_t& c : under) {
      if (is_empty(c)) c = filler_of(row);
    }
    const auto inked = std::count_if(under.begin(), under.end(), [&](char32_t c) { return !is_empty(c); });
    if (index == 0 || inked != 1 || under.find(U'|') == std::u32string::npos) return under;
    under.assign(width, filler_of(row));
    under[cells_.count.row->characters.substr(begin, width).find(U'|')] = U'|';
    return under;
  }

  const StripCells& cells_;
  const GridStyle& style_;
  std::vector<BarPieces> bars_;
  std::vector<BarColumns> columns_;
};

// A whole line, or what follows its label's column where that stays.
source::Edit line_edit(const std::string& grid, const GridRow& row, const GridStyle& style,
                       const std::u32string& characters) {
  if (style.label == 0) return {{row.offsets.front(), row.offsets.back(), row.file}, source::to_utf8(characters)};
  const std::string label = label_of(grid, row);
  const std::size_t missing = style.label - source::count_code_points(label);
  const auto begin = static_cast<std::uint32_t>(line_begin(grid, row.label.begin));
  return {{begin, row.offsets.back(), row.file},
          std::string(style.indent, ' ') + label + std::string(missing, ' ') + source::to_utf8(characters)};
}

}  // namespace

std::string realigned(const std::string& grid, const GridContext& context) {
  const source::Text text("", grid);
  source::Diagnostics unused;
  const GridInput input{text, {0, static_cast<std::uint32_t>(grid.size()), 0}, context, unused};
  const std::vector<Strip> strips = read_strips(input);
  const GridDraft draft = read_draft(input, strips);
  const GridStyle style = style_of(grid, strips);
  std::vector<source::Edit> edits;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    const StripCells cells = read_cells(input, strips[i]);
    std::vector<const BarDraft*> bars;
    for (const BarDraft& bar : draft.bars) {
      if (bar.strip == static_cast<int>(i)) bars.push_back(&bar);
    }
    const std::vector<std::u32string> rows = StripSetter(input, cells, bars, style).write();
    edits.push_back(line_edit(grid, *cells.count.row, style, rows.front()));
    for (std::size_t row = 0; row < cells.rows.size(); ++row) {
      edits.push_back(line_edit(grid, *cells.rows[row].row, style, rows[row + 1]));
    }
  }
  return source::edited(grid, std::move(edits));
}

}  // namespace fretsheaf::lesson
