#include "lesson/grid_times.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "lesson/grid_count_order.h"
#include "lesson/grid_phrases.h"

namespace fretsheaf::lesson {

using source::Code;

namespace {

class TimeSetter {
 public:
  TimeSetter(const GridInput& input, GridDraft& draft, Music& music)
      : input_(input), drafts_(draft.bars), music_(music), meter_(input.context.meter) {}

  void run() {
    music_.bars.resize(drafts_.size());
    late_.resize(drafts_.size(), false);
    check_meter();
    for (std::size_t i = 0; i < drafts_.size(); ++i) begin_bar(i);
    end_bars();
    for (std::size_t i = 0; i < drafts_.size(); ++i) check_percent(i);
    for (const BarDraft& draft : drafts_) report_misplaced(draft);
  }

 private:
  static int last_figure(const BarDraft& draft) {
    int last = 0;
    for (const Count& count : draft.counts) last = count.bad ? last : std::max(last, count.figure);
    return last;
  }

  // Where every bar of several counts on to the same figure beyond the meter, it is the meter that is wrong: one slip.
  void check_meter() {
    if (drafts_.size() < 2) return;
    const int counted = last_figure(drafts_[0]);
    if (counted <= meter_.upper() || counted > theory::most_counts || !parted_figures(counted).empty()) return;
    for (const BarDraft& draft : drafts_) {
      const bool has_meter = std::any_of(draft.words.begin(), draft.words.end(),
                                         [](const PlacedWord& word) { return word.kind == RowKind::meter; });
      if (has_meter || last_figure(draft) != counted) return;
    }
    const Count& last = drafts_[0].counts.back();
    input_.diagnostics.error(
        Code::meter_not_counted, last.range,
        "every bar here counts to " + std::to_string(counted) + ", but the meter is " + meter_.to_string(),
        "write the meter that these bars have, such as meter = \"" + std::to_string(counted) + "/" +
            std::to_string(meter_.lower) + "\"");
    for (BarDraft& draft : drafts_) {
      for (Count& count : draft.counts) count.bad = count.bad || count.figure > meter_.upper();
      draft.damaged = true;
    }
  }

  void begin_bar(std::size_t i) {
    BarDraft& draft = drafts_[i];
    Bar& bar = music_.bars[i];
    bar.range = draft.range;
    bar.right = draft.right;
    read_meter(draft, bar);
    bar.meter = meter_;
    bar.end = meter_.bar();
    for (Count& count : draft.counts) count.at = (Rational(count.figure - 1) + count.fraction) * meter_.count();
    check_length(draft);
    set_begin(i);
    bar.number = i == 0 ? (bar.begin > Rational(0) ? 0 : 1) : music_.bars[i - 1].number + (late_[i] ? 0 : 1);
    if (late_[i] && bar.meter_written) {
      input_.diagnostics.error(Code::meter_inside_bar, *bar.meter_written, "a meter cannot change inside a bar",
                               "this bar completes the one before: write the meter at the next bar that starts at 1");
    }
  }

  void read_meter(const BarDraft& draft, Bar& bar) {
    lost_meter_ = lost_meter_ || draft.lost_meter;
    for (const PlacedWord& word : draft.words) {
      if (word.kind != RowKind::meter) continue;
      if (word.count > 0) {
        input_.diagnostics.error(Code::meter_inside_bar, word.range, "a meter cannot change inside a bar",
                                 "write it under the bar's first count");
      } else if (bar.meter_written) {
        input_.diagnostics.error(Code::word_twice, word.range, tick(word.text) + " is the second meter of this bar",
                                 "write one meter a bar");
      } else if (const auto meter = theory::parse_meter(word.text)) {
        meter_ = *meter;
        lost_meter_ = false;
        bar.meter_written = word.range;
      } else {
        lost_meter_ = true;
        input_.diagnostics.error(Code::meter_unknown, word.range, tick(word.text) + " is no meter",
                                 "write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64: `3/4`, `2+2+3/8`");
      }
    }
  }

  void report_misplaced(const BarDraft& draft) const {
    if (draft.unsure) return;
    for (const source::Diagnostic& wrong : draft.misplaced) {
      input_.diagnostics.error(wrong.code, wrong.range, wrong.message, wrong.help);
    }
  }

  // Counts beyond the meter.
  void check_length(BarDraft& draft) {
    const Count* first = nullptr;
    const Count* last = nullptr;
    for (Count& count : draft.counts) {
      if (count.bad || count.figure <= meter_.upper()) continue;
      count.bad = true;
      if (first == nullptr) first = &count;
      last = &count;
    }
    if (first == nullptr) return;
    draft.damaged = true;
    // What was reported was the meter, or a bar line, which says why.
    if (lost_meter_ || draft.slipped) return;
    draft.unsure = true;
    const std::string meter = meter_.to_string();
    if (first == last && has_run_together(first->figure)) return report_figure(*first);
    const auto excess = static_cast<std::int64_t>(last->figure) - meter_.upper();
    input_.diagnostics.error(Code::bar_too_long, source::joined(first->range, last->range),
                             "this bar counts to " + std::to_string(last->figure) + ": " +
                                 counts_phrase(Rational(excess)) + " more than " + meter + " has",
                             "end the bar before, or write its meter in a `meter` row; frets stand in string rows");
  }

  // Whether a count of several figures can be none of this meter, rather than one too many.
  bool has_run_together(int figure) const {
    if (figure < 10 || figure == meter_.upper() + 1) return false;
    return meter_.upper() < 10 || figure > theory::most_counts || !parted_figures(figure).empty();
  }

  void report_figure(const Count& count) {
    const std::string parted = parted_figures(count.figure);
    input_.diagnostics.error(Code::bar_too_long, count.range,
                             tick(count.text) + " is no count of " + meter_.to_string(),
                             parted.empty() ? "figures stand apart: `1 2 3`; frets stand in string rows"
                                            : "figures stand apart: " + tick(parted));
  }

  bool may_begin_late(std::size_t i) const {
    if (i == 0) return true;
    const BarSign before = drafts_[i - 1].right;
    return before == BarSign::doubled || begins_repeat(before) || ends_repeat(before);
  }

  void set_begin(std::size_t i) {
    BarDraft& draft = drafts_[i];
    const auto good = [](const Count& count) { return !count.bad; };
    const auto first = std::find_if(draft.counts.begin(), draft.counts.end(), good);
    // What was reported before the first sound count may have been the 1.
    if (first == draft.counts.end() || first != draft.counts.begin() || first->at == Rational(0)) return;
    if (!may_begin_late(i)) return report_short(draft, *first);
    const auto starts = [](const Count& count) { return !count.bad && count.starts(); };
    const auto sounding = std::find_if(draft.counts.begin(), draft.counts.end(), starts);
    music_.bars[i].begin = sounding == draft.counts.end() ? first->at : sounding->at;
    late_[i] = i > 0;
  }

  void report_short(BarDraft& draft, const Count& first) {
    draft.damaged = true;
    if (lost_meter_ || std::exchange(draft.unsure, true)) return;
    const std::string lacking = counts_phrase(first.at / meter_.count());
    input_.diagnostics.error(
        Code::bar_too_short, first.range,
        "this bar begins at " + tick(first.text) + ": " + lacking + " short of " + meter_.to_string(),
        "write `1` where the note before goes on, `(1)` for a rest; only the first bar, or one after "
        "`||`, `|:` or `:|`, may begin later");
  }

  void end_bars() {
    std::size_t target = 0;
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      const auto by_repeat = ends_repeat(drafts_[i].right) ? end_before_repeat(i, target) : std::nullopt;
      const std::size_t back = target;
      if (begins_repeat(drafts_[i].right)) target = i + 1;
      std::optional<Rational> by_next;
      if (i + 1 < drafts_.size() && late_[i + 1]) by_next = music_.bars[i + 1].begin;
      if (!by_repeat && !by_next) continue;
      end_early(i, by_repeat, by_next, back);
    }
  }

  // Where a bar ends whose repeat goes back to a bar that begins late.
  std::optional<Rational> end_before_repeat(std::size_t i, std::size_t target) const {
    const Bar& back = music_.bars[target];
    if (back.begin == Rational(0)) return std::nullopt;
    return music_.bars[i].meter.bar() - (back.meter.bar() - back.begin);
  }

  const Count& first_start(std::size_t i) const {
    const auto& counts = drafts_[i].counts;
    const auto at = [&](const Count& count) { return !count.bad && count.at == music_.bars[i].begin; };
    return *std::find_if(counts.begin(), counts.end(), at);
  }

  static std::string repeat_phrase(std::size_t target) {
    return std::string("its `:|` goes back to ") + (target == 0 ? "the pickup" : "a bar that begins late");
  }

  void end_early(std::size_t i, std::optional<Rational> by_repeat, std::optional<Rational> by_next,
                 std::size_t target) {
    Bar& bar = music_.bars[i];
    BarDraft& draft = drafts_[i];
    const std::string full = bar.meter.to_string();
    if (by_repeat && by_next && *by_repeat != *by_next) {
      const Count& next = first_start(i + 1);
      input_.diagnostics.error(Code::bar_ends_differ, next.range,
                               "the bar before would end twice: here, at " + tick(next.text) + ", and " +
                                   counts_phrase((bar.meter.bar() - *by_repeat) / bar.meter.count()) + " early, as " +
                                   repeat_phrase(target),
                               "begin this bar where the repeated part begins");
      return;
    }
    bar.end = by_repeat ? *by_repeat : *by_next;
    if (bar.end <= bar.begin) {
      input_.diagnostics.error(Code::bar_cut_off, draft.range, "nothing is left of this bar",
                               "the bar that begins late after it, or at its repeat's start, takes all of " + full);
      bar.end = bar.meter.bar();
      return;
    }
    report_cut_off(i, by_repeat ? repeat_phrase(target) : "the next bar begins late");
  }

  void report_cut_off(std::size_t i, const std::string& why) {
    BarDraft& draft = drafts_[i];
    const Bar& bar = music_.bars[i];
    const Count* first = nullptr;
    const Count* last = nullptr;
    for (Count& count : draft.counts) {
      if (count.bad || count.at < bar.end) continue;
      count.bad = true;
      if (first == nullptr) first = &count;
      last = &count;
    }
    if (first == nullptr) return;
    draft.damaged = true;
    const std::string early = counts_phrase((bar.meter.bar() - bar.end) / bar.meter.count());
    input_.diagnostics.error(Code::bar_cut_off, source::joined(first->range, last->range),
                             tick(first->text) + " is cut off: this bar ends " + early + " early, as " + why,
                             "take out what is written there, or write the later bar from its 1");
  }

  void check_percent(std::size_t i) {
    BarDraft& draft = drafts_[i];
    if (!draft.percent) return;
    Bar& bar = music_.bars[i];
    bar.same_as_previous = true;
    const auto refuse = [&](std::string message, std::string help) {
      input_.diagnostics.error(Code::bar_repeat, *draft.percent, std::move(message), std::move(help));
      draft.damaged = true;
    };
    if (i == 0) return refuse("there is no bar before to repeat", "write this bar's counts");
    const Bar& before = music_.bars[i - 1];
    const Rational count = bar.meter.count();
    if (bar.end != bar.meter.bar()) {
      const std::string early = counts_phrase((bar.meter.bar() - bar.end) / count);
      return refuse("this bar ends " + early + " early, and cannot repeat the bar before",
                    "write its counts instead of `%`");
    }
    if (before.end - before.begin == bar.meter.bar() || drafts_[i - 1].damaged) return;
    const bool same_counts = before.meter.lower == bar.meter.lower;
    refuse(same_counts ? "the bar before lasts " + counts_phrase((before.end - before.begin) / count) + ", this one " +
                             counts_phrase(bar.meter.bar() / count)
                       : "the bar before is in " + before.meter.to_string() + ", this one in " + bar.meter.to_string(),
           "`%` repeats a bar of the same length: write this bar's counts");
  }

  const GridInput& input_;
  std::vector<BarDraft>& drafts_;
  Music& music_;
  theory::Meter meter_;
  bool lost_meter_ = false;  // the one that holds here was reported
  std::vector<bool> late_;
};

// Whether a bar writes every beat that lies in it from `from` on.
bool writes_beats(const BarDraft& draft, const Bar& bar, Rational from) {
  for (int figure = 1; figure <= bar.meter.upper(); ++figure) {
    const Rational at = Rational(figure - 1) * bar.meter.count();
    if (at < from || at < bar.begin || at >= bar.end) continue;
    const bool written = std::any_of(draft.counts.begin(), draft.counts.end(), [&](const Count& count) {
      return count.figure == figure && count.fraction == Rational(0);
    });
    if (!written) return false;
  }
  return true;
}

void warn_of_bar(const GridInput& input, const BarDraft& draft, const Bar& bar) {
  const Count* note = nullptr;
  for (const Count& count : draft.counts) {
    if (!count.bad && count.starts()) note = &count;
  }
  if (note == nullptr || note->rest || note->lost) return;
  const Count& last = draft.counts.back();
  if (writes_beats(draft, bar, last.at)) return;
  const int figure = last.figure + 1;
  input.diagnostics.warning(
      Code::count_unwritten, note->range,
      "the note at " + tick(note->text) + " is held over beat " + std::to_string(figure) + ", which is not written",
      "this strip's other bars write every beat: write " + tick(std::to_string(figure)) + " to hold it, or " +
          tick("(" + std::to_string(figure) + ")") + " for a rest");
}

}  // namespace

void set_times(const GridInput& input, GridDraft& draft, Music& music) {
  TimeSetter(input, draft, music).run();
}

void warn_of_unwritten_beats(const GridInput& input, const GridDraft& draft, const Music& music) {
  for (std::size_t begin = 0, end = 0; begin < draft.bars.size(); begin = end) {
    std::vector<std::size_t> lacking;
    int whole = 0;
    for (end = begin; end < draft.bars.size() && draft.bars[end].strip == draft.bars[begin].strip; ++end) {
      const BarDraft& bar = draft.bars[end];
      if (bar.percent || bar.counts.empty()) continue;
      if (writes_beats(bar, music.bars[end], Rational(0))) {
        // A pickup of one beat shows no habit.
        if (music.bars[end].end - music.bars[end].begin > music.bars[end].meter.count()) ++whole;
      } else {
        lacking.push_back(end);
      }
    }
    const bool habit = lacking.size() == 1 && whole > 0;
    if (habit && !draft.bars[lacking[0]].damaged) warn_of_bar(input, draft.bars[lacking[0]], music.bars[lacking[0]]);
  }
}

}  // namespace fretsheaf::lesson
