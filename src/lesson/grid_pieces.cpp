#include "lesson/grid_pieces.h"

#include <algorithm>

#include "lesson/grid_items.h"
#include "lesson/grid_words.h"

namespace fretsheaf::lesson {
namespace {

// Takes one cell apart.
class CellPieces {
 public:
  CellPieces(const GridInput& input, const Cell& cell, const BarDraft& bar)
      : input_(input), cell_(cell), row_(*cell.row), bar_(bar) {}

  std::vector<Piece> take() {
    switch (row_.kind) {
      case RowKind::count:
        take_counts();
        break;
      case RowKind::string:
        take_notes();
        break;
      case RowKind::mark:
        take_marks();
        break;
      default:
        take_words();
    }
    return std::move(pieces_);
  }

 private:
  Piece& add(int begin, int end) {
    Piece piece;
    piece.text = row_.characters.substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin));
    piece.begin = begin - cell_.begin;
    piece.end = end - cell_.begin;
    piece.glued = !pieces_.empty() && pieces_.back().end == piece.begin;
    pieces_.push_back(std::move(piece));
    return pieces_.back();
  }

  int count_begin(int index) const { return bar_.counts[static_cast<std::size_t>(index)].begin - cell_.begin; }

  // It keeps its distance from the count before it, or from the bar's start.
  void leave_free(Piece& piece) const {
    piece.anchor = -1;
    piece.offset = piece.begin;
    for (int i = 0; i < static_cast<int>(bar_.counts.size()) && count_begin(i) <= piece.begin; ++i) {
      piece.anchor = i;
      piece.offset = piece.begin - count_begin(i);
    }
  }

  // It is to begin where its count does.
  void anchor(Piece& piece) const {
    const auto count = bar_.percent ? std::nullopt : count_at(bar_, piece.begin + cell_.begin);
    if (!count) return leave_free(piece);
    piece.anchor = *count;
    piece.offset = 0;
  }

  void take_counts() {
    for (int column = cell_.begin; bar_.percent && column < cell_.end; ++column) {
      if (row_.at(column) == U'%') leave_free(add(column, column + 1));
    }
    for (std::size_t i = 0; i < bar_.counts.size(); ++i) {
      add(bar_.counts[i].begin, bar_.counts[i].end).anchor = static_cast<int>(i);
    }
  }

  void take_notes() {
    for (std::size_t i = 0; i < bar_.counts.size(); ++i) {
      for (const NoteDraft& draft : bar_.counts[i].notes) {
        if (draft.note.place.string != row_.string) continue;
        const int begin = token_of(draft).begin;
        Piece& piece = add(begin, draft.end);
        piece.anchor = static_cast<int>(i);
        // `h7` is in line with its sign or with its figure under the count.
        const bool in_line = begin == bar_.counts[i].begin || draft.digit < 0;
        piece.offset = in_line ? 0 : begin - draft.digit;
        piece.after_count = !draft.note.graces.empty();
      }
    }
  }

  void take_words() {
    for (const CellWord& word : read_words(input_, cell_)) {
      if (row_.kind == RowKind::lyric && !word.quoted) {
        take_syllables(word);
      } else {
        anchor(add(word.begin, word.end));
      }
    }
  }

  void take_syllables(const CellWord& word) {
    for (int at = word.begin; at < word.end;) {
      const bool hyphens = row_.at(at) == U'-';
      int end = at;
      while (end < word.end && (row_.at(end) == U'-') == hyphens) ++end;
      Piece& piece = add(at, end);
      if (hyphens) {
        leave_free(piece);
      } else {
        anchor(piece);
      }
      at = end;
    }
  }

  int dashes_end(int from) const {
    while (from < cell_.end && row_.at(from) == U'-') ++from;
    return from;
  }

  int mark_end(int begin) const {
    const auto ends = [&](char32_t c) { return is_blank(c) || c == U'-' || c == U'<' || c == U'>'; };
    int end = begin + 1;
    if (row_.at(begin) == U'<' || row_.at(begin) == U'>') return end;
    while (end < cell_.end && !ends(row_.at(end))) ++end;
    return end;
  }

  bool is_span(int begin, int end) const {
    const std::string word = row_.text(begin, end);
    return word == "<" || word == ">" || word == "PM" || word == "let" || word == "TP";
  }

  void take_marks() {
    for (int at = cell_.begin; at < cell_.end;) {
      if (is_blank(row_.at(at))) {
        ++at;
      } else if (row_.at(at) == U'-') {
        Piece& piece = add(at, dashes_end(at));
        piece.text.clear();
        piece.drawn = true;
        leave_free(piece);
        at = piece.end + cell_.begin;
      } else {
        at = take_mark(at);
      }
    }
  }

  int take_mark(int begin) {
    const int word_end = mark_end(begin);
    const bool span = is_span(begin, word_end);
    const int end = span ? dashes_end(word_end) : word_end;
    Piece& piece = add(begin, end);
    piece.text.resize(static_cast<std::size_t>(word_end - begin));
    piece.drawn = span;
    anchor(piece);
    if (pieces_.size() < 2 || piece.anchor < 0) return end;
    const Piece& before = pieces_[pieces_.size() - 2];
    if (before.anchor == piece.anchor) {
      piece.offset = before.offset + piece.begin - before.begin;
    } else if (before.drawn && before.end > count_begin(piece.anchor)) {
      // The span before reaches this count, and still is to.
      piece.offset = piece.begin - count_begin(piece.anchor);
    }
    return end;
  }

  const GridInput& input_;
  const Cell& cell_;
  const GridRow& row_;
  const BarDraft& bar_;
  std::vector<Piece> pieces_;
};

}  // namespace

std::vector<BarPieces> take_apart(const GridInput& input, const StripCells& cells,
                                  const std::vector<const BarDraft*>& bars) {
  std::vector<BarPieces> result;
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const Cell& cell = cells.count.cells[i];
    BarPieces bar;
    bar.width = cell.end - cell.begin;
    for (const Count& count : bars[i]->counts) bar.counts.push_back(count.begin - cell.begin);
    bar.rows.push_back(CellPieces(input, cell, *bars[i]).take());
    for (const RowCells& row : cells.rows) {
      bar.rows.emplace_back();
      if (i < row.cells.size()) bar.rows.back() = CellPieces(input, row.cells[i], *bars[i]).take();
    }
    result.push_back(std::move(bar));
  }
  return result;
}

}  // namespace fretsheaf::lesson
