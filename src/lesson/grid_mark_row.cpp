#include "lesson/grid_mark_row.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "lesson/grid_phrases.h"
#include "lesson/lookalikes.h"
#include "source/nearest.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

constexpr std::array<std::string_view, 9> dynamics = {"ppp", "pp", "p", "mp", "mf", "f", "ff", "fff", "sfz"};
constexpr std::array<std::pair<std::string_view, SpanKind>, 5> spans = {{
    {"<", SpanKind::crescendo},
    {">", SpanKind::diminuendo},
    {"PM", SpanKind::palm_mute},
    {"let", SpanKind::let_ring},
    {"TP", SpanKind::tremolo},
}};
constexpr std::string_view what_marks_are =
    "marks are `ppp` to `fff`, `sfz`, `fermata`, hairpins `<---` and `>---`, and `PM---`, `let---`, `TP---`";

std::optional<SpanKind> span_of(std::string_view word) {
  for (const auto& [text, kind] : spans) {
    if (text == word) return kind;
  }
  return std::nullopt;
}

class MarkCellReader {
 public:
  MarkCellReader(const GridInput& input, const Cell& cell, int bar_index, int before, int& open, GridDraft& draft)
      : input_(input),
        cell_(cell),
        row_(*cell.row),
        index_(bar_index),
        bar_(draft.bars[static_cast<std::size_t>(bar_index)]),
        before_(before),
        open_(open),
        draft_(draft) {}

  void read() {
    // What dashes go on from: the bar before, until something else stands in this one.
    going_on_ = before_;
    for (int at = cell_.begin; at < cell_.end;) {
      if (is_blank(row_.at(at))) {
        ++at;
      } else {
        at = row_.at(at) == U'-' ? read_dashes(at) : read_mark(at);
      }
    }
    // Only what reaches into this bar is open at its end.
    if (going_on_ != before_ || touched_) open_ = going_on_;
  }

 private:
  int dashes_end(int from) const {
    while (from < cell_.end && row_.at(from) == U'-') ++from;
    return from;
  }

  int word_end(int begin) const {
    int end = begin;
    // Several are a hairpin as others draw it.
    while (end < cell_.end && (row_.at(begin) == U'<' || row_.at(begin) == U'>') && row_.at(end) == row_.at(begin))
      ++end;
    if (end > begin) return end;
    while (end < cell_.end && !is_blank(row_.at(end)) && row_.at(end) != U'-' && row_.at(end) != U'<' &&
           row_.at(end) != U'>')
      ++end;
    return end;
  }

  // The last count that a span up to `end` reaches, at or after `first`.
  int reached(int end, int first) const {
    // Dashes to the bar line reach all that a `%` bar repeats.
    if (bar_.percent) return end == cell_.end ? CountRef::last_event : CountRef::bar_start;
    int last = first;
    for (int i = 0; i < static_cast<int>(bar_.counts.size()); ++i) {
      const Count& count = bar_.counts[static_cast<std::size_t>(i)];
      if (!count.bad && count.begin < end && i > last) last = i;
    }
    return last;
  }

  int read_dashes(int begin) {
    const int end = dashes_end(begin);
    if (going_on_ < 0) {
      if (!bar_.damaged && !damaged_before()) report_stray_dashes(begin, end);
      return end;
    }
    SpanDraft& going_on = draft_.spans[static_cast<std::size_t>(going_on_)];
    const int last = reached(end, CountRef::bar_start);
    // Dashes that end before the bar's first count reach nothing here.
    if (bar_.percent || last >= 0) going_on.last = {index_, last};
    touched_ = true;
    return end;
  }

  bool damaged_before() const { return index_ > 0 && draft_.bars[static_cast<std::size_t>(index_) - 1].damaged; }

  void report_stray_dashes(int begin, int end) {
    input_.diagnostics.error(Code::mark_dashes, row_.range(begin, end), "these dashes go on from nothing",
                             "they follow a mark, `<---` or `PM---`, or stand at a bar's start after one");
  }

  int read_mark(int begin) {
    going_on_ = -1;
    const int word = word_end(begin);
    const int end = dashes_end(word);
    const std::string text = row_.text(begin, word);
    const bool dashed = end > word;
    const auto span = span_of(text);
    if (!span && text != "fermata" && !is_dynamic(text)) return report_unknown(begin, end, text);
    if (!span && dashed) {
      input_.diagnostics.error(Code::mark_dashes, row_.range(begin, end), tick(text) + " takes no dashes",
                               "dashes follow `<`, `>`, `PM`, `let` and `TP` only");
      return end;
    }
    const auto count = place_word(bar_, cell_, begin, end);
    if (!count) {
      bar_.damaged = true;  // what goes on from it has been dropped
      return end;
    }
    if (span) {
      add_span(*span, *count, begin, end);
    } else if (text == "fermata") {
      add_fermata(*count, begin, end);
    } else {
      draft_.dynamics.push_back({{index_, *count}, text, row_.range(begin, word)});
    }
    return end;
  }

  // Of all long dashes of the cell, the first is reported.
  bool report_long_dash(int begin, int end) {
    for (int column = begin; column < end; ++column) {
      if (!is_long_dash(row_.at(column))) continue;
      bar_.damaged = true;
      if (std::exchange(long_dash_, true)) return true;
      input_.diagnostics.error(Code::token_long_dash, row_.range(column, column + 1),
                               tick(row_.text(column, column + 1)) + " is no dash of a mark row",
                               "write plain dashes: " + tick("<---") + ", " + tick("PM---"));
      return true;
    }
    return false;
  }

  int report_unknown(int begin, int end, const std::string& text) {
    if (report_long_dash(begin, end)) return end;
    std::vector<std::string_view> known(dynamics.begin(), dynamics.end());
    known.insert(known.end(), {"fermata", "PM", "let", "TP"});
    const std::string guess = source::nearest(text, known);
    bar_.damaged = true;
    input_.diagnostics.error(Code::mark_unknown, row_.range(begin, std::max(begin + 1, begin + code_points(text))),
                             "there is no mark " + tick(text),
                             guess.empty() ? std::string(what_marks_are) : "did you mean " + tick(guess) + "?");
    return end;
  }

  static int code_points(const std::string& text) {
    return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
  }

  void add_span(SpanKind kind, int count, int begin, int end) {
    const bool hairpin = kind == SpanKind::crescendo || kind == SpanKind::diminuendo;
    // Dashes may follow after a blank, or in the next bar.
    int next = end;
    while (next < cell_.end && is_blank(row_.at(next))) ++next;
    const bool dashed = end > begin + 1 || end == cell_.end || row_.at(next) == U'-' || is_long_dash(row_.at(next));
    if (hairpin && !dashed) {
      input_.diagnostics.error(
          Code::mark_dashes, row_.range(begin, end), "this hairpin has no length",
          "draw it with dashes to the last count that it reaches: " + tick(row_.text(begin, end) + "---"));
      return;
    }
    draft_.spans.push_back({kind, {index_, count}, {index_, reached(end, count)}, row_.range(begin, end)});
    going_on_ = static_cast<int>(draft_.spans.size()) - 1;
  }

  void add_fermata(int count, int begin, int end) {
    if (bar_.percent) {
      input_.diagnostics.error(Code::bar_repeat_not_alone, row_.range(begin, end),
                               "a fermata stands in a bar that repeats the one before", "write counts instead of `%`");
      return;
    }
    bar_.counts[static_cast<std::size_t>(count)].fermata = row_.range(begin, end);
  }

  const GridInput& input_;
  const Cell& cell_;
  const GridRow& row_;
  int index_;
  BarDraft& bar_;
  int before_;
  int going_on_ = -1;  // an index into the draft's spans
  bool touched_ = false;
  bool long_dash_ = false;
  int& open_;
  GridDraft& draft_;
};

// What dashes at a bar's start go on from: the same row of the bar before. In a new strip the rows may stand otherwise;
// then it is the only one that was left open.
int span_before(const OpenSpans& before, std::size_t ordinal, bool new_strip) {
  if (ordinal < before.size() && before[ordinal] >= 0) return before[ordinal];
  const auto open = [](int span) { return span >= 0; };
  if (!new_strip || std::count_if(before.begin(), before.end(), open) != 1) return -1;
  return *std::find_if(before.begin(), before.end(), open);
}

}  // namespace

bool is_dynamic(std::string_view word) {
  return std::find(dynamics.begin(), dynamics.end(), word) != dynamics.end();
}

void read_mark_cell(const GridInput& input, const Cell& cell, int bar_index, const OpenSpans& before, OpenSpans& open,
                    GridDraft& draft) {
  const auto ordinal = static_cast<std::size_t>(cell.row->ordinal);
  if (open.size() <= ordinal) open.resize(ordinal + 1, -1);
  const auto index = static_cast<std::size_t>(bar_index);
  const bool new_strip = index > 0 && draft.bars[index].strip != draft.bars[index - 1].strip;
  MarkCellReader(input, cell, bar_index, span_before(before, ordinal, new_strip), open[ordinal], draft).read();
}

}  // namespace fretsheaf::lesson
