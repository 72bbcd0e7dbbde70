#include "score/written_form.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "score/harmony.h"
#include "score/values.h"

namespace fretsheaf::score {
namespace {

using lesson::BarSign;

// The sign of a bar line at which one thing ends and another begins.
BarSign joined(BarSign before, BarSign after, BarSign otherwise) {
  const bool end = lesson::ends_repeat(before);
  const bool begin = lesson::begins_repeat(after);
  if (end && begin) return BarSign::repeat_both;
  if (end) return BarSign::repeat_end;
  return begin ? BarSign::repeat_begin : otherwise;
}

class FormWriter {
 public:
  FormWriter(Example& example, const lesson::Form& form, int capo)
      : example_(example), chart_(*example.form), first_(form.here_first), last_(form.here_last), capo_(capo) {}

  void write() {
    const theory::Meter begins = example_.bars.front().meter;
    const theory::Meter ends = example_.bars.back().meter;
    give_chords();
    open_repeat();
    mark_repeats();
    std::vector<Bar> bars;
    for (int number = 1; number < first_; ++number) bars.push_back(slashes(number, begins));
    const auto before = static_cast<int>(bars.size());
    place_music(bars);
    for (int number = last_ + 1; number <= static_cast<int>(chart_.bars.size()); ++number) {
      bars.push_back(slashes(number, ends));
    }
    close(bars);
    example_.bars = std::move(bars);
    move_by(before);
    number_steps();
    show_meters();
    if (std::ranges::find(example_.staves, lesson::Staff::slash) == example_.staves.end()) {
      example_.staves.insert(example_.staves.begin(), lesson::Staff::slash);
    }
  }

 private:
  const FormCell& cell(int number) const { return chart_.bars[static_cast<std::size_t>(number) - 1]; }

  std::vector<ChordMark> chords(int number, const theory::Meter& meter) const {
    std::vector<ChordMark> marks;
    const std::vector<std::optional<theory::Chord>>& names = cell(number).chords;
    for (std::size_t i = 0; i < names.size(); ++i) {
      const Rational at = meter.bar() * Rational(static_cast<std::int64_t>(i), static_cast<std::int64_t>(names.size()));
      ChordMark mark{at, names[i], {}};
      if (names[i] && capo_ > 0) mark.fingered = fingered(*names[i], example_.key, capo_);
      marks.push_back(std::move(mark));
    }
    return marks;
  }

  Bar slashes(int number, const theory::Meter& meter) const {
    Bar bar;
    bar.number = number;
    bar.meter = meter;
    bar.end = meter.bar();
    bar.right = cell(number).repeat_end ? BarSign::repeat_end : BarSign::plain;
    bar.chords = chords(number, meter);
    const std::vector<Rational> beats = meter.beats();
    for (std::size_t i = 0; i < beats.size(); ++i) {
      Event event;
      event.at = beats[i];
      event.length = (i + 1 < beats.size() ? beats[i + 1] : meter.bar()) - beats[i];
      event.value = value_of(event.length).value_or(NoteValue{});
      event.struck = true;
      event.beat_slash = true;
      bar.events.push_back(std::move(event));
    }
    return bar;
  }

  // The bar of the form at which one of the example stands; a pickup has none.
  int number_in_form(const Bar& bar) const { return bar.number == 0 ? 0 : bar.number + first_ - 1; }

  void give_chords() {
    if (std::ranges::any_of(example_.bars, [](const Bar& bar) { return !bar.chords.empty(); })) return;
    int given = 0;
    for (Bar& bar : example_.bars) {
      if (bar.number == 0 || bar.number == given) continue;
      given = bar.number;
      for (ChordMark& mark : chords(number_in_form(bar), bar.meter)) {
        if (mark.at >= bar.begin && mark.at < bar.end) bar.chords.push_back(std::move(mark));
      }
    }
  }

  // A `:|` that goes back to the example's start says so where other bars come before it, unless the form's own repeat
  // has begun there.
  void open_repeat() {
    if (first_ == 1 || lesson::begins_repeat(example_.left)) return;
    bool open = false;
    for (int number = 1; number < first_; ++number) {
      open = (open || cell(number).repeat_begin) && !cell(number).repeat_end;
    }
    if (open || cell(first_).repeat_begin) return;
    const auto sign = std::ranges::find_if(example_.bars, [](const Bar& bar) {
      return lesson::begins_repeat(bar.right) || lesson::ends_repeat(bar.right);
    });
    if (sign != example_.bars.end() && lesson::ends_repeat(sign->right)) example_.left = BarSign::repeat_begin;
  }

  // The form's repeats that begin or end inside the example.
  void mark_repeats() {
    std::vector<Bar>& bars = example_.bars;
    for (std::size_t i = 0; i < bars.size(); ++i) {
      const int number = number_in_form(bars[i]);
      if (number == 0) continue;
      const bool last_of_number = i + 1 == bars.size() || bars[i + 1].number != bars[i].number;
      if (cell(number).repeat_end && last_of_number) bars[i].right = joined(BarSign::repeat_end, bars[i].right, {});
      const bool first_of_number = i == 0 || bars[i - 1].number != bars[i].number;
      if (!cell(number).repeat_begin || !first_of_number) continue;
      BarSign& before = i == 0 ? example_.left : bars[i - 1].right;
      before = joined(before, BarSign::repeat_begin, {});
    }
  }

  void place_music(std::vector<Bar>& bars) {
    if (!bars.empty()) {
      bars.back().right = joined(bars.back().right, example_.left, BarSign::doubled);
      example_.left = BarSign::plain;
    }
    for (Bar& bar : example_.bars) {
      bar.number = number_in_form(bar);
      bars.push_back(std::move(bar));
    }
    if (last_ < static_cast<int>(chart_.bars.size()) && bars.back().right == BarSign::final) {
      bars.back().right = BarSign::doubled;
    }
  }

  // Repeats of the form that begin at slashes, and the last bar line.
  void close(std::vector<Bar>& bars) {
    for (std::size_t i = 0; i < bars.size(); ++i) {
      const bool of_form = bars[i].number > 0 && (bars[i].number < first_ || bars[i].number > last_);
      if (!of_form || !cell(bars[i].number).repeat_begin) continue;
      BarSign& before = i == 0 ? example_.left : bars[i - 1].right;
      before = joined(before, BarSign::repeat_begin, {});
    }
    if (!lesson::ends_repeat(bars.back().right)) bars.back().right = BarSign::final;
  }

  void move_by(int bars) {
    for (auto* dynamics : {&example_.dynamics, &example_.repeated_dynamics}) {
      for (lesson::Dynamic& dynamic : *dynamics) dynamic.moment.bar += bars;
    }
    for (auto* spans : {&example_.spans, &example_.repeated_spans}) {
      for (lesson::Span& span : *spans) {
        span.first.bar += bars;
        span.last.bar += bars;
      }
    }
    for (lesson::Ending& ending : example_.endings) {
      ending.first_bar += bars;
      ending.last_bar += bars;
    }
  }

  // The bars of a build-up are called as they are printed.
  void number_steps() {
    for (Step& step : example_.build_up) {
      step.first += first_ - 1;
      step.last += first_ - 1;
    }
  }

  void show_meters() {
    std::vector<Bar>& bars = example_.bars;
    for (std::size_t i = 0; i < bars.size(); ++i) bars[i].show_meter = i == 0 || bars[i].meter != bars[i - 1].meter;
  }

  Example& example_;
  const FormChart& chart_;
  int first_;
  int last_;
  int capo_;
};

}  // namespace

void write_out(Example& example, const lesson::Form& form, int capo) {
  if (example.bars.empty() || !example.form) return;
  FormWriter(example, form, capo).write();
}

}  // namespace fretsheaf::score
