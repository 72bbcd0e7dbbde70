#include "exchange/adopt_bars.h"

#include <algorithm>
#include <optional>

#include "exchange/xml_text.h"

namespace fretsheaf::exchange {

using lesson::BarSign;
using source::Code;

namespace {

// The meter that lasts so long, with the counts of another where that can be.
std::optional<theory::Meter> meter_of(Rational length, const theory::Meter& like) {
  const auto fits = [&](int lower) {
    const Rational counts = length * Rational(lower);
    return counts.denominator() == 1 && counts >= Rational(1) && counts <= Rational(theory::most_counts);
  };
  for (const int lower : {like.lower, 4, 8, 16, 32, 64, 2, 1}) {
    if (fits(lower)) return theory::Meter{{static_cast<int>((length * Rational(lower)).numerator())}, lower};
  }
  return std::nullopt;
}

class BarMaker {
 public:
  BarMaker(const AdoptContext& context, const Section& section, const std::vector<bool>& may_begin_late)
      : context_(context), section_(section), may_begin_late_(may_begin_late) {}

  lesson::Music run() {
    music_.bars.resize(static_cast<std::size_t>(section_.last - section_.first));
    odd_.resize(music_.bars.size(), false);
    set_meters();
    set_signs();
    for (std::size_t i = 0; i < music_.bars.size(); ++i) set_begin(i);
    // Each round takes back at least one late beginning or makes at least one bar odd.
    for (std::size_t round = 0; round < 2 * music_.bars.size() + 4 && take_back_what_clashes(); ++round) {
    }
    number();
    set_endings();
    return std::move(music_);
  }

 private:
  const TakenMeasure& taken(std::size_t i) const {
    return context_.part.measures[static_cast<std::size_t>(section_.first) + i];
  }
  int measure(std::size_t i) const { return section_.first + static_cast<int>(i); }

  void set_meters() {
    theory::Meter meter = section_.meter;
    for (std::size_t i = 0; i < music_.bars.size(); ++i) {
      if (taken(i).meter) meter = *taken(i).meter;
      music_.bars[i].meter = meter;
      music_.bars[i].end = meter.bar();
      lengths_.push_back(length_of(taken(i), meter));
    }
  }

  void set_signs() {
    if (taken(0).left.repeat) music_.left = BarSign::repeat_begin;
    for (std::size_t i = 0; i < music_.bars.size(); ++i) {
      const bool last = i + 1 == music_.bars.size();
      const bool end = taken(i).right.repeat;
      const bool begin = !last && taken(i + 1).left.repeat;
      const std::string& style = taken(i).right.style;
      const std::string next = last ? "" : taken(i + 1).left.style;
      const bool doubled = style == "light-light" || style == "light-heavy" || style == "heavy-heavy" ||
                           style == "heavy-light" || next == "light-light";
      music_.bars[i].right = end && begin ? BarSign::repeat_both
                             : end        ? BarSign::repeat_end
                             : begin      ? BarSign::repeat_begin
                             : last       ? BarSign::final
                             : doubled    ? BarSign::doubled
                                          : BarSign::plain;
      if (!style.empty() && !doubled && style != "regular") {
        context_.losses.lose(Code::adopt_changed, taken(i).right.element, measure(i), "its bar line is drawn plain",
                             "a lesson has plain, double, repeat and final bar lines");
      }
    }
  }

  // Where a short measure begins late: a pickup, or the second half of a bar that a sign divides.
  void set_begin(std::size_t i) {
    lesson::Bar& bar = music_.bars[i];
    const Rational begin = bar.meter.bar() - lengths_[i];
    if (begin < bar.meter.count() || !may_begin_late_[i]) return;
    if (i == 0) {
      bar.begin = begin;
      return;
    }
    const lesson::Bar& before = music_.bars[i - 1];
    const bool divided = before.right != BarSign::plain && before.meter == bar.meter;
    if (divided && begin - before.begin == lengths_[i - 1]) bar.begin = begin;
  }

  // Where the reader of lessons will have the bar end: early where the next begins late, or where its repeat goes back
  // to a bar that begins late.
  std::optional<Rational> read_end(std::size_t i, std::size_t target) const {
    const lesson::Bar& bar = music_.bars[i];
    std::optional<Rational> end;
    if (ends_repeat(bar.right) && music_.bars[target].begin > Rational(0)) {
      const lesson::Bar& back = music_.bars[target];
      end = bar.meter.bar() - (back.meter.bar() - back.begin);
    }
    if (i + 1 < music_.bars.size() && music_.bars[i + 1].begin > Rational(0)) {
      if (end && *end != music_.bars[i + 1].begin) return std::nullopt;
      end = music_.bars[i + 1].begin;
    }
    return end.value_or(bar.meter.bar());
  }

  bool take_back_what_clashes() {
    std::size_t target = 0;
    bool clashes = false;
    for (std::size_t i = 0; i < music_.bars.size(); ++i) {
      lesson::Bar& bar = music_.bars[i];
      const auto end = read_end(i, target);
      if (!end || *end - bar.begin != lengths_[i]) {
        settle(i, target);
        clashes = true;
      } else {
        bar.end = *end;
      }
      if (begins_repeat(bar.right)) target = i + 1;
      if (target >= music_.bars.size()) target = i;
    }
    return clashes;
  }

  void settle(std::size_t i, std::size_t target) {
    lesson::Bar& bar = music_.bars[i];
    const bool next_late = i + 1 < music_.bars.size() && music_.bars[i + 1].begin > Rational(0);
    if (next_late) return make_odd(i + 1);
    if (ends_repeat(bar.right) && music_.bars[target].begin > Rational(0) && !odd_[target]) return make_odd(target);
    make_odd(i);
  }

  // A meter of its own.
  void make_odd(std::size_t i) {
    lesson::Bar& bar = music_.bars[i];
    bar.begin = Rational(0);
    if (bar.meter.bar() == lengths_[i]) return;
    const auto meter = meter_of(lengths_[i], bar.meter);
    if (!meter || odd_[i]) {
      if (!odd_[i]) {
        context_.losses.error(Code::adopt_meter, taken(i).element, measure(i),
                              "it lasts " + lengths_[i].to_string() + " of a whole note, which no meter does",
                              "a lesson's meters have 1 to 64 counts over 1, 2, 4 … 64");
      }
      odd_[i] = true;
      lengths_[i] = bar.meter.bar();
      return;
    }
    odd_[i] = true;
    context_.losses.lose(
        Code::adopt_changed, taken(i).element, measure(i),
        "it is not as long as its meter, " + bar.meter.to_string() + ", and is written in " + meter->to_string(),
        "only a pickup, and a bar that a sign divides, may be shorter");
    bar.meter = *meter;
    bar.end = meter->bar();
  }

  void number() {
    bool renumbered = false;
    for (std::size_t i = 0; i < music_.bars.size(); ++i) {
      lesson::Bar& bar = music_.bars[i];
      const bool late = bar.begin > Rational(0);
      bar.number = i == 0 ? (late ? 0 : 1) : music_.bars[i - 1].number + (late ? 0 : 1);
      const auto before = whole(taken(i).number);
      renumbered = renumbered || !before || *before != bar.number + section_.bars_before;
      const bool other_meter = i > 0 && !(bar.meter == music_.bars[i - 1].meter);
      if (other_meter || (i == 0 && !(bar.meter == section_.meter))) bar.meter_written = lesson::Range{};
    }
    if (!renumbered) return;
    context_.losses.lose(Code::adopt_changed, taken(0).element, measure(0),
                         "from here on bars are numbered anew, from " + std::to_string(music_.bars[0].number),
                         "every example of a lesson counts its own bars");
  }

  void set_endings() {
    int last = 0;
    for (std::size_t i = 0; i < music_.bars.size(); ++i) {
      const std::string number = taken(i).left.ending;
      if (number.empty()) continue;
      const auto wanted = whole(number);
      const int own = wanted && (*wanted == 1 || *wanted == last + 1) ? *wanted : last + 1;
      if (!wanted || *wanted != own) {
        context_.losses.lose(Code::adopt_changed, taken(i).left.element, measure(i),
                             "the ending " + number.substr(0, 20) + " is written as " + std::to_string(own) + ".",
                             "a lesson's endings are for one time each, in order");
      }
      last = own;
      music_.endings.push_back({std::to_string(own) + ".", static_cast<int>(i), static_cast<int>(end_of(i)), {}});
    }
  }

  // The last bar of the ending that begins there. A lesson's ends at a sign, so a plain bar line becomes a double one.
  std::size_t end_of(std::size_t first) {
    std::size_t last = first;
    while (last + 1 < music_.bars.size() && taken(last).right.ending.empty() && taken(last + 1).left.ending.empty() &&
           music_.bars[last].right == BarSign::plain) {
      ++last;
    }
    const bool closed = last + 1 == music_.bars.size() || !taken(last + 1).left.ending.empty();
    if (music_.bars[last].right == BarSign::plain && !closed) {
      music_.bars[last].right = BarSign::doubled;
      context_.losses.lose(Code::adopt_changed, taken(last).right.element, measure(last),
                           "a double bar line ends its ending", "a lesson's endings last up to a sign");
    }
    return last;
  }

  const AdoptContext& context_;
  const Section& section_;
  const std::vector<bool>& may_begin_late_;
  lesson::Music music_;
  std::vector<Rational> lengths_;
  std::vector<bool> odd_;
};

}  // namespace

Rational length_of(const TakenMeasure& measure, const theory::Meter& meter) {
  const bool full = measure.length == Rational(0) || (measure.only_rests_of_bar && measure.length > meter.bar());
  return full ? meter.bar() : measure.length;
}

lesson::Music bars_of(const AdoptContext& context, const Section& section, const std::vector<bool>& may_begin_late) {
  return BarMaker(context, section, may_begin_late).run();
}

}  // namespace fretsheaf::exchange
