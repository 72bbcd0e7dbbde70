#include "lesson/grid_string_row.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "lesson/grid_phrases.h"
#include "lesson/grid_string_tokens.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

class StringCellReader {
 public:
  StringCellReader(const GridInput& input, const Cell& cell, BarDraft& bar)
      : input_(input), row_(*cell.row), cell_(cell), bar_(bar) {}

  void read() {
    std::vector<Run> runs = read_runs(input_, cell_);
    if (bar_.percent) return report_under_percent(runs);
    std::optional<NoteDraft> before;
    bool after_damage = false;
    for (Run& run : runs) {
      std::optional<NoteDraft> last;
      if (run.damaged) {
        lose(run);
      } else {
        last = run.notes.back();
        const NoteDraft first = run.notes.front();
        if (!place(run, after_damage)) {
          last.reset();
        } else if (before) {
          warn_of_slide_off(*before, first);
        }
      }
      after_damage = run.damaged;
      before = std::move(last);
    }
  }

 private:
  void report_under_percent(const std::vector<Run>& runs) {
    if (runs.empty()) return;
    input_.diagnostics.error(Code::bar_repeat_not_alone, row_.range(runs.front().begin, runs.front().end),
                             "a note stands in a bar that repeats the one before",
                             "write counts instead of `%`, or leave the string rows empty here");
  }

  // What stood there cannot be known, so nothing is said about what seems to be missing.
  void lose(const Run& run) {
    bar_.damaged = true;
    for (Count& count : bar_.counts) count.lost = count.lost || (count.begin < run.end && run.begin < count.end);
  }

  // Filler and a number after a slide off may have been meant as a slide to that number.
  void warn_of_slide_off(const NoteDraft& last, const NoteDraft& next) {
    if (last.note.slide_off == SlideOff::none || !next.fret) return;
    const std::string sign = last.note.slide_off == SlideOff::up ? "/" : "\\";
    const std::string fret = std::to_string(next.note.place.fret);
    input_.diagnostics.warning(Code::token_slide_off, last.note.range,
                               tick(row_.text(last.begin, last.end)) + " slides off, not to the " + fret + " after it",
                               "for a slide to that note write " + tick(sign + fret));
  }

  // The first digit decides; where that stands under no count, or there is none, the first character.
  std::optional<int> count_of(const NoteDraft& draft) const {
    if (draft.digit >= 0) {
      if (const auto count = count_at(bar_, draft.digit)) return count;
    }
    return count_at(bar_, draft.begin);
  }

  // Whether each note of the run found a count or the note that it is a grace note to.
  bool place(Run& run, bool after_damage) {
    std::vector<NoteDraft> waiting;  // under no count so far
    std::optional<int> last;
    for (NoteDraft& draft : run.notes) {
      auto count = count_of(draft);
      // In a run a count that is taken already is not this note's.
      if (count && count == last && !(draft.digit >= 0 && count_at(bar_, draft.digit) == count)) count.reset();
      if (!count) {
        waiting.push_back(std::move(draft));
        continue;
      }
      last = count;
      if (add_graces(waiting, draft)) {
        tie(std::move(draft), *count);
      } else {
        bar_.counts[static_cast<std::size_t>(*count)].lost = true;
      }
      waiting.clear();
    }
    if (waiting.empty()) return true;
    // What follows a token that could not be read may belong to it, as in `h 7`.
    if (!after_damage) report_unplaced(waiting, run);
    return false;
  }

  bool add_graces(const std::vector<NoteDraft>& waiting, NoteDraft& draft) {
    for (const NoteDraft& grace : waiting) {
      const Note& note = grace.note;
      const bool plain = grace.fret && !note.ghost && !note.harmonic;
      const bool signs =
          note.accent || note.staccato || note.tenuto || note.vibrato || note.bend || note.slide_off != SlideOff::none;
      if (plain && !signs && draft.fret) {
        draft.note.graces.push_back({note.place, note.approach, note.range});
        continue;
      }
      std::string message = tick(row_.text(grace.begin, grace.end));
      message.append(" stands under no count, and cannot be a grace note to ");
      message.append(tick(row_.text(draft.begin, draft.end)));
      input_.diagnostics.error(Code::token_grace, note.range, std::move(message),
                               "a grace note is a plain fret joined to a fret; else write its count over it");
      bar_.damaged = true;
      return false;
    }
    return true;
  }

  void tie(NoteDraft draft, int index) {
    Count& count = bar_.counts[static_cast<std::size_t>(index)];
    if (count.bad) return;
    if (count.rest) return report_under_rest(draft, index);
    const auto same = std::find_if(count.notes.begin(), count.notes.end(), [&](const NoteDraft& other) {
      return other.note.place.string == draft.note.place.string;
    });
    if (same != count.notes.end()) {
      input_.diagnostics.error(
          Code::token_twice, draft.note.range,
          tick(row_.text(draft.begin, draft.end)) + " is the second note of one string at " + tick(count.text),
          "write a count for each note");
      return;
    }
    count.notes.push_back(std::move(draft));
  }

  void report_under_rest(const NoteDraft& draft, int index) {
    const Count& rest = bar_.counts[static_cast<std::size_t>(index)];
    const auto side = [&](int i) {
      const bool inside = i >= 0 && i < static_cast<int>(bar_.counts.size());
      return inside ? tick(bar_.counts[static_cast<std::size_t>(i)].text) : std::string("the bar line");
    };
    bar_.damaged = true;
    input_.diagnostics.error(Code::token_under_rest, draft.note.range,
                             tick(row_.text(draft.begin, draft.end)) + " stands under a rest, " + tick(rest.text) +
                                 ", between " + side(index - 1) + " and " + side(index + 1),
                             "write the count without parentheses, or move the note");
  }

  void report_unplaced(const std::vector<NoteDraft>& waiting, const Run& run) {
    bar_.damaged = true;
    if (bar_.counts.empty()) return;
    const int begin = waiting.front().begin;
    const int anchor = waiting.front().digit >= 0 ? waiting.front().digit : begin;
    const bool joined = waiting.front().begin > run.begin;
    const std::string help =
        joined ? "write its count over it: each number of a joined run needs one, but for a grace note"
               : "move it under one of them, or write its count";
    bar_.strays.push_back({anchor, row_.range(begin, run.end), row_.text(begin, run.end), help});
  }

  const GridInput& input_;
  const GridRow& row_;
  const Cell& cell_;
  BarDraft& bar_;
};

}  // namespace

void read_string_cell(const GridInput& input, const Cell& cell, BarDraft& bar) {
  StringCellReader(input, cell, bar).read();
}

}  // namespace fretsheaf::lesson
