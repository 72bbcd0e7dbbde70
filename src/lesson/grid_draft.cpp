#include "lesson/grid_draft.h"

#include <algorithm>
#include <string>
#include <utility>

#include "lesson/grid_counts.h"
#include "lesson/grid_hand_rows.h"
#include "lesson/grid_labels.h"
#include "lesson/grid_mark_row.h"
#include "lesson/grid_strays.h"
#include "lesson/grid_string_row.h"
#include "lesson/grid_words.h"
#include "lesson/limits.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

class DraftReader {
 public:
  DraftReader(const GridInput& input, const std::vector<Strip>& strips) : input_(input), strips_(strips) {}

  GridDraft read() {
    see_rows();
    for (std::size_t i = 0; i < strips_.size() && !full_; ++i) read_strip(static_cast<int>(i));
    if (!draft_.has_strings && !draft_.has_play) strum_all();
    check_end();
    return std::move(draft_);
  }

 private:
  // Which rows the example has decides how all its strips are read.
  void see_rows() {
    const GridRow* strings = nullptr;
    const GridRow* play = nullptr;
    for (const Strip& strip : strips_) {
      for (const GridRow& row : strip.rows) {
        if (row.kind == RowKind::string && strings == nullptr) strings = &row;
        if (row.kind == RowKind::play && play == nullptr) play = &row;
      }
    }
    if (strings != nullptr && input_.context.vary) {
      input_.diagnostics.error(Code::row_string_in_vary, strings->label,
                               "a string row stands in an example that varies another",
                               "its notes come from there: mark where each falls with `*` in a `play` row");
    } else if (strings != nullptr) {
      draft_.has_strings = true;
      if (play != nullptr) {
        input_.diagnostics.error(Code::row_play_beside_strings, play->label, "a play row stands beside string rows",
                                 "in an example with string rows the frets say what is struck: take the play row out");
      }
    } else {
      draft_.has_play = play != nullptr;
    }
    if (!draft_.has_strings) report_rows_without_notes();
  }

  bool needs_notes(RowKind kind) const {
    return kind == RowKind::finger || kind == RowKind::spell || (kind == RowKind::hand && !input_.context.vary);
  }

  // Said once a kind of row; the rows are not read.
  void report_rows_without_notes() {
    std::vector<RowKind> said;
    for (const Strip& strip : strips_) {
      for (const GridRow& row : strip.rows) {
        if (!needs_notes(row.kind) || std::find(said.begin(), said.end(), row.kind) != said.end()) continue;
        said.push_back(row.kind);
        input_.diagnostics.error(
            Code::row_without_notes, row.label,
            "a " + std::string(row_name(row.kind)) + " row stands in an example without string rows",
            input_.context.vary ? "fingers and spellings go with the notes: write them in the example that is varied"
                                : "it belongs to notes; how a strum is struck is written in a `stroke` row");
      }
    }
  }

  void read_strip(int index) {
    const Strip& strip = strips_[static_cast<std::size_t>(index)];
    if (strip.count_row < 0) {
      gap_ = true;
      return;
    }
    const StripCells cells = read_cells(input_, strip);
    said_ = {};
    join(cells);
    if (cells.count.cells.empty() || cells.count.row->shifted) {
      gap_ = true;
      return;
    }
    for (std::size_t bar = 0; bar < cells.count.cells.size(); ++bar) {
      if (draft_.bars.size() == limits::bars) return report_too_many(cells.count.cells[bar]);
      read_bar(index, strip, cells, bar);
      counts_ += draft_.bars.back().counts.size();
      if (counts_ > limits::counts) return report_too_many_counts();
      for (const auto& [its, wrong] : cells.misplaced) {
        if (its == bar) draft_.bars.back().misplaced.push_back(wrong);
      }
    }
  }

  // Where a strip ends and the next begins, the two signs join.
  void join(const StripCells& cells) {
    const BarSign left = cells.signs.front().sign;
    BarSign& border = draft_.bars.empty() ? draft_.left : draft_.bars.back().right;
    border = draft_.bars.empty() ? left : joined_sign(border, left);
  }

  void report_too_many(const Cell& cell) {
    input_.diagnostics.error(Code::bar_limit, cell.row->range(cell.begin, cell.end),
                             "this example has more than " + std::to_string(limits::bars) + " bars",
                             "divide it into several examples");
    full_ = true;
  }

  // At the first that is too many.
  void report_too_many_counts() {
    const std::vector<Count>& counts = draft_.bars.back().counts;
    input_.diagnostics.error(Code::bar_limit, counts[counts.size() - (counts_ - limits::counts)].range,
                             "this example has more than " + std::to_string(limits::counts) + " counts",
                             "divide it into several examples");
    full_ = true;
  }

  // Where a bar line beside it is out of line, its counts are read without a word.
  void read_count_cell(const Cell& cell, bool slipped, BarDraft& made) {
    source::Diagnostics unsaid;
    const GridInput input{input_.text, input_.grid, input_.context, slipped ? unsaid : input_.diagnostics};
    const bool damaged = std::exchange(made.damaged, false);
    read_counts(input, cell, said_, made);
    if (made.counts.empty() && !made.percent && !slipped) report_empty(cell, made);
    made.slipped = slipped;
    made.unsure = made.damaged || slipped;
    made.damaged = made.damaged || damaged;
  }

  void read_bar(int strip_index, const Strip& strip, const StripCells& cells, std::size_t bar) {
    const auto index = static_cast<int>(draft_.bars.size());
    BarDraft& made = draft_.bars.emplace_back();
    const Cell& count = cells.count.cells[bar];
    made.range = count.row->range(count.begin, count.end);
    made.strip = strip_index;
    made.right = cells.signs[bar + 1].sign;
    made.damaged = std::exchange(gap_, false) || strip.damaged;
    last_sign_ = count.row->range(cells.signs[bar + 1].begin, cells.signs[bar + 1].end);
    const auto sign = static_cast<std::size_t>(cells.slipped);
    read_count_cell(count, sign > 0 && (bar == sign || bar + 1 == sign), made);
    const OpenSpans before = std::exchange(open_, {});
    for (const RowCells& row : cells.rows) {
      if (bar >= row.cells.size()) continue;
      const Cell& cell = row.cells[bar];
      if (cell.damaged) {
        made.damaged = true;
        lose_word(draft_, made, cell.row->kind);
      } else {
        read_cell(cell, index, before);
      }
    }
    report_strays(input_, count, draft_.bars.back());
  }

  void read_cell(const Cell& cell, int bar, const OpenSpans& before) {
    BarDraft& made = draft_.bars[static_cast<std::size_t>(bar)];
    switch (cell.row->kind) {
      case RowKind::count:
        break;
      case RowKind::string:
        if (draft_.has_strings) read_string_cell(input_, cell, made);
        break;
      case RowKind::mark:
        read_mark_cell(input_, cell, bar, before, open_, draft_);
        break;
      case RowKind::play:
        if (draft_.has_play) read_hand_cell(input_, cell, made);
        break;
      case RowKind::finger:
      case RowKind::hand:
      case RowKind::spell:
      case RowKind::stroke:
        if (draft_.has_strings || !needs_notes(cell.row->kind)) read_hand_cell(input_, cell, made);
        break;
      default:
        read_word_cell(input_, cell, bar, draft_);
    }
  }

  void report_empty(const Cell& cell, BarDraft& made) {
    made.damaged = true;
    const int end = std::max(cell.end, cell.begin + 1);
    input_.diagnostics.error(Code::bar_empty, cell.row->range(cell.begin, end), "this bar has no counts",
                             "write `1` where the note before goes on, `(1)` for a rest, `%` to repeat the bar before");
  }

  // Every count without parentheses is a strum.
  void strum_all() {
    for (BarDraft& bar : draft_.bars) {
      for (Count& count : bar.counts) {
        if (!count.rest && !count.bad) count.strum = Strum::plain;
      }
    }
  }

  // The last bar line is final; a repeat cannot begin there.
  void check_end() {
    if (draft_.bars.empty()) {
      if (strips_.empty()) {
        input_.diagnostics.error(Code::grid_empty, input_.grid, "this grid has no bars",
                                 "write a count row, `count | 1 2 3 4 |`, and the string rows under it");
      }
      return;
    }
    BarSign& last = draft_.bars.back().right;
    if (last == BarSign::plain) last = BarSign::final;
    if (last != BarSign::repeat_begin && last != BarSign::repeat_both) return;
    input_.diagnostics.error(Code::repeat_at_end, last_sign_, "a repeat begins at the example's end",
                             last == BarSign::repeat_both ? "write `:|`" : "write `|`, or `:|` to end a repeat");
  }

  const GridInput& input_;
  const std::vector<Strip>& strips_;
  GridDraft draft_;
  OpenSpans open_;
  std::size_t counts_ = 0;  // of all bars
  CountRowSaid said_;       // of the strip's
  Range last_sign_;
  bool gap_ = false;   // a strip, or part of one, could not be read
  bool full_ = false;  // the limit of bars was passed
};

}  // namespace

GridDraft read_draft(const GridInput& input, const std::vector<Strip>& strips) {
  return DraftReader(input, strips).read();
}

}  // namespace fretsheaf::lesson
