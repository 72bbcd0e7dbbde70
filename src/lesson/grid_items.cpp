#include "lesson/grid_items.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "lesson/grid_words.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {

// All characters of a token take one byte and one column.
Token token_of(const NoteDraft& draft) {
  Token token{draft.begin, {}};
  const auto column = [&](const Range& range) {
    return draft.begin - static_cast<int>(draft.note.range.begin - range.begin);
  };
  for (const GraceNote& grace : draft.note.graces) {
    const int begin = column(grace.range);
    token.begin = std::min(token.begin, begin);
    token.graces.push_back(begin + (grace.approach == Approach::none ? 0 : 1));
  }
  return token;
}

namespace {

bool is_digit(char32_t character) {
  return character >= U'0' && character <= U'9';
}

// The token with its frets replaced, and how many characters stand before the note's own fret.
struct NewToken {
  std::u32string text;
  int before_fret = 0;
};

NewToken new_token(const GridRow& row, const NoteDraft& draft, const Token& token, const Note& moved) {
  NewToken made;
  std::size_t grace = 0;
  for (int column = token.begin; column < draft.end; ++column) {
    const bool is_grace = grace < token.graces.size() && column == token.graces[grace];
    if (!is_grace && column != draft.digit) {
      made.text += row.at(column);
      continue;
    }
    if (!is_grace) made.before_fret = static_cast<int>(made.text.size());
    const int fret = is_grace ? moved.graces[grace++].place.fret : moved.place.fret;
    made.text += source::from_utf8(std::to_string(fret));
    while (is_digit(row.at(column + 1))) ++column;
  }
  return made;
}

class Planner {
 public:
  Planner(const GridInput& input, const Strip& strip, const GridChange& change) : input_(input), change_(change) {
    plans_.resize(static_cast<std::size_t>(input.context.neck.strings()));
    for (std::size_t i = 0; i < plans_.size(); ++i) plans_[i].string = static_cast<int>(i) + 1;
    for (const GridRow& row : strip.rows) {
      if (row.kind == RowKind::string) plan_of(row.string).row = &row;
    }
  }

  void add_bar(const BarDraft& bar, int cell) {
    const Count* before = nullptr;
    for (const Count& count : bar.counts) {
      for (const NoteDraft& draft : count.notes) add_note(draft, count, before, cell);
      before = &count;
    }
  }

  void add_words(const RowCells& row, const std::vector<const BarDraft*>& bars) {
    RowPlan plan;
    plan.row = row.row;
    for (std::size_t cell = 0; cell < row.cells.size(); ++cell) {
      for (const CellWord& word : read_words(input_, row.cells[cell])) {
        add_word(plan, word, *bars[cell], static_cast<int>(cell));
      }
    }
    if (plan.changed) plans_.push_back(std::move(plan));
  }

  std::vector<RowPlan> take() {
    for (RowPlan& plan : plans_) {
      const auto by_column = [](const RowItem& a, const RowItem& b) {
        return a.anchor + a.offset < b.anchor + b.offset;
      };
      std::stable_sort(plan.items.begin(), plan.items.end(), by_column);
      std::stable_sort(plan.erased.begin(), plan.erased.end(), by_column);
    }
    return std::move(plans_);
  }

 private:
  RowPlan& plan_of(int string) { return plans_[static_cast<std::size_t>(string) - 1]; }

  void add_note(const NoteDraft& draft, const Count& count, const Count* before, int cell) {
    RowPlan& old_plan = plan_of(draft.note.place.string);
    const GridRow& row = *old_plan.row;
    const auto found = change_.notes.find(draft.note.range.begin);
    const Note& moved = found == change_.notes.end() ? draft.note : found->second;
    const Token token = token_of(draft);
    const NewToken made = new_token(row, draft, token, moved);

    RowItem old;
    old.text =
        row.characters.substr(static_cast<std::size_t>(token.begin), static_cast<std::size_t>(draft.end - token.begin));
    old.anchor = count.begin;
    old.boundary = count.begin;
    old.offset = token.begin - count.begin;
    old.cell = cell;
    old.old_begin = token.begin;
    old.old_end = draft.end;
    old_plan.erased.push_back(old);

    RowItem item = old;
    if (found != change_.notes.end()) {
      item.text = made.text;
      item.changed = true;
      const bool by_digit = draft.digit >= count.begin && draft.digit < count.end;
      if (by_digit || !draft.note.graces.empty()) {
        item.offset = (by_digit ? draft.digit - count.begin : 0) - made.before_fret;
      }
      if (!draft.note.graces.empty() && before != nullptr) item.least = before->end;
      old_plan.changed = true;
      plan_of(moved.place.string).changed = true;
      if (moved.place.string != draft.note.place.string) item.old_begin = item.old_end = -1;
    }
    plan_of(moved.place.string).items.push_back(std::move(item));
  }

  void add_word(RowPlan& plan, const CellWord& word, const BarDraft& bar, int cell) {
    RowItem item;
    item.text = plan.row->characters.substr(static_cast<std::size_t>(word.begin),
                                            static_cast<std::size_t>(word.end - word.begin));
    item.anchor = word.begin;
    const auto count = bar.percent ? std::nullopt : count_at(bar, word.begin);
    item.boundary = count ? bar.counts[static_cast<std::size_t>(*count)].begin : word.begin;
    item.cell = cell;
    item.old_begin = word.begin;
    item.old_end = word.end;
    plan.erased.push_back(item);
    const auto found = change_.words.find(word.range.begin);
    if (found == change_.words.end()) return plan.items.push_back(std::move(item));
    const std::u32string text =
        word.quoted ? U'"' + source::from_utf8(found->second) + U'"' : source::from_utf8(found->second);
    item.changed = text != item.text;
    plan.changed = plan.changed || item.changed;
    item.text = text;
    if (!found->second.empty()) plan.items.push_back(std::move(item));
  }

  const GridInput& input_;
  const GridChange& change_;
  std::vector<RowPlan> plans_;
};

bool has_words(RowKind kind) {
  return kind == RowKind::chord || kind == RowKind::text || kind == RowKind::finger || kind == RowKind::spell;
}

}  // namespace

std::vector<RowPlan> plan_rows(const GridInput& input, const Strip& strip, const StripCells& cells,
                               const std::vector<const BarDraft*>& bars, const GridChange& change) {
  Planner planner(input, strip, change);
  for (std::size_t cell = 0; cell < bars.size(); ++cell) planner.add_bar(*bars[cell], static_cast<int>(cell));
  for (const RowCells& row : cells.rows) {
    if (has_words(row.row->kind)) planner.add_words(row, bars);
  }
  return planner.take();
}

}  // namespace fretsheaf::lesson
