#include "lesson/grid_columns.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace fretsheaf::lesson {
namespace {

class ColumnSetter {
 public:
  explicit ColumnSetter(const BarPieces& bar) : bar_(bar), rows_(bar.rows.size()) {
    columns_.pieces.resize(bar.rows.size());
  }

  BarColumns set() {
    set_anchored(-1, 0);
    int shift = 0;
    for (int i = 0; i < static_cast<int>(bar_.counts.size()); ++i) {
      const int written = bar_.counts[static_cast<std::size_t>(i)];
      int column = written + shift;
      for (std::size_t row = 0; row < rows_.size(); ++row) column = std::max(column, least_column(row, i));
      columns_.counts.push_back(column);
      shift = column - written;
      set_anchored(i, column);
    }
    columns_.width = bar_.width + shift;
    for (std::size_t row = 0; row < rows_.size(); ++row) columns_.width = std::max(columns_.width, least_width(row));
    end_pieces();
    return std::move(columns_);
  }

 private:
  const Piece* next(std::size_t row) const {
    const std::vector<Piece>& pieces = bar_.rows[row];
    return rows_[row] < pieces.size() ? &pieces[rows_[row]] : nullptr;
  }

  const Piece* before(std::size_t row) const { return rows_[row] == 0 ? nullptr : &bar_.rows[row][rows_[row] - 1]; }

  // Where a piece ends, as far as the columns that it reaches are set.
  std::optional<int> end_of(std::size_t row, std::size_t index) const {
    const Piece& piece = bar_.rows[row][index];
    const int text_end = columns_.pieces[row][index].first + static_cast<int>(piece.text.size());
    if (!piece.drawn) return text_end;
    // The last count that it reaches, which it must reach still, and no more.
    const auto past = std::lower_bound(bar_.counts.begin(), bar_.counts.end(), piece.end);
    const auto reached = static_cast<std::size_t>(past - bar_.counts.begin());
    if (reached > columns_.counts.size()) return std::nullopt;
    if (reached == 0) return std::max(piece.end, text_end);
    return std::max(columns_.counts[reached - 1] + piece.end - bar_.counts[reached - 1], text_end);
  }

  // Where the next piece of the row may begin at the earliest.
  std::optional<int> free_from(std::size_t row) const {
    if (before(row) == nullptr) return 0;
    const auto end = end_of(row, rows_[row] - 1);
    if (!end) return std::nullopt;
    return *end + (next(row)->glued ? 0 : 1);
  }

  int least_column(std::size_t row, int count) const {
    const Piece* piece = next(row);
    if (piece == nullptr || piece->anchor != count) return 0;
    int begin = free_from(row).value_or(0);
    if (piece->after_count && count > 0) begin = std::max(begin, count_end(count - 1));
    return begin - piece->offset;
  }

  int count_end(int count) const {
    const Piece& piece = bar_.rows.front()[static_cast<std::size_t>(count)];
    return columns_.counts[static_cast<std::size_t>(count)] + piece.end - piece.begin;
  }

  void set_anchored(int count, int column) {
    for (std::size_t row = 0; row < rows_.size(); ++row) {
      for (const Piece* piece = next(row); piece != nullptr && piece->anchor == count; piece = next(row)) {
        const int begin = std::max(column + piece->offset, free_from(row).value_or(0));
        columns_.pieces[row].emplace_back(begin, begin);
        ++rows_[row];
      }
    }
  }

  // A blank stays before the bar line, where there was one.
  int least_width(std::size_t row) const {
    const Piece* last = before(row);
    if (last == nullptr) return 0;
    const bool touches = last->end == bar_.width;
    if (touches && last->drawn) return columns_.pieces[row].back().first + std::max<int>(1, text_size(*last));
    return *end_of(row, rows_[row] - 1) + (touches ? 0 : 1);
  }

  static int text_size(const Piece& piece) { return static_cast<int>(piece.text.size()); }

  void end_pieces() {
    for (std::size_t row = 0; row < rows_.size(); ++row) {
      for (std::size_t i = 0; i < bar_.rows[row].size(); ++i) {
        const Piece& piece = bar_.rows[row][i];
        const bool to_bar_line = piece.drawn && piece.end == bar_.width;
        columns_.pieces[row][i].second = to_bar_line ? columns_.width : *end_of(row, i);
      }
    }
  }

  const BarPieces& bar_;
  std::vector<std::size_t> rows_;  // the piece that comes next
  BarColumns columns_;
};

}  // namespace

BarColumns set_columns(const BarPieces& bar) {
  return ColumnSetter(bar).set();
}

}  // namespace fretsheaf::lesson
