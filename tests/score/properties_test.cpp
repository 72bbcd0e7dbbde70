#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>
#include <tuple>

#include "score/build.h"
#include "score/values.h"
#include "spell_out.h"
#include "support/dice.h"
#include "support/random_lesson.h"
#include "theory/meter.h"

using namespace fretsheaf;
using score::Rational;

namespace {

// What sounds: where it starts, on which string and fret (0 and 0 for a strum), how long.
using Sounding = std::vector<std::tuple<int, Rational, int, int, Rational>>;

// Joins what is held on, one string at a time.
class Joiner {
 public:
  void add(int bar, Rational at, int string, int fret, bool held, Rational length) {
    if (held) {
      REQUIRE(open_.contains({string, fret}));
      std::get<4>(sounding_[open_[{string, fret}]]) += length;
    } else {
      sounding_.emplace_back(bar, at, string, fret, length);
      open_[{string, fret}] = sounding_.size() - 1;
    }
    here_.insert({string, fret});
  }

  // At the end of an event: only what sounded in it can be held on.
  void end_event() {
    std::erase_if(open_, [&](const auto& entry) { return !here_.contains(entry.first); });
    here_.clear();
  }

  Sounding take() { return std::move(sounding_); }

 private:
  Sounding sounding_;
  std::map<std::pair<int, int>, std::size_t> open_;
  std::set<std::pair<int, int>> here_;
};

Sounding sounding(const lesson::Music& music) {
  Joiner joiner;
  for (int b = 0; b < static_cast<int>(music.bars.size()); ++b) {
    for (const lesson::Event& event : music.bars[static_cast<std::size_t>(b)].events) {
      const bool held = event.kind == lesson::EventKind::held;
      for (const lesson::Note& note : event.notes) {
        joiner.add(b, event.at, note.place.string, note.place.fret, note.held || held, event.length);
      }
      if (event.notes.empty() && event.kind != lesson::EventKind::rest) {
        joiner.add(b, event.at, 0, 0, held, event.length);
      }
      joiner.end_event();
    }
  }
  return joiner.take();
}

Sounding sounding(const score::Example& example) {
  Joiner joiner;
  for (int b = 0; b < static_cast<int>(example.bars.size()); ++b) {
    for (const score::Event& event : example.bars[static_cast<std::size_t>(b)].events) {
      for (const score::Note& note : event.notes) {
        joiner.add(b, event.at, note.place.string, note.place.fret, note.tie_from, event.length);
      }
      if (event.notes.empty() && !event.rest) joiner.add(b, event.at, 0, 0, event.tie_from, event.length);
      joiner.end_event();
    }
  }
  return joiner.take();
}

// The silences, neighbouring ones joined, from bar to bar.
std::vector<std::pair<Rational, Rational>> silences(const auto& bars, auto is_rest) {
  std::vector<std::pair<Rational, Rational>> out;
  Rational start;
  for (const auto& bar : bars) {
    for (const auto& event : bar.events) {
      const Rational at = start + event.at - bar.begin;
      if (!is_rest(event)) continue;
      if (!out.empty() && out.back().second == at) {
        out.back().second += event.length;
      } else {
        out.emplace_back(at, at + event.length);
      }
    }
    start += bar.end - bar.begin;
  }
  return out;
}

void check_lengths(const score::Bar& bar) {
  Rational at = bar.begin;
  for (const score::Event& event : bar.events) {
    REQUIRE(event.at == at);
    REQUIRE(event.length > Rational(0));
    at += event.length;
    if (event.whole_bar_rest) {
      REQUIRE(bar.events.size() == 1);
      continue;
    }
    REQUIRE(event.value.log2 >= 0);
    REQUIRE(event.value.log2 <= score::shortest_log2);
    Rational ratio(1);
    if (event.tuplet) {
      const score::Tuplet& tuplet = bar.tuplets[static_cast<std::size_t>(*event.tuplet)];
      ratio = Rational(tuplet.normal, tuplet.actual);
    }
    REQUIRE(event.value.length() * ratio == event.length);
  }
  REQUIRE(at == bar.end);
}

void check_tuplets(const score::Bar& bar) {
  int before = -1;
  for (std::size_t t = 0; t < bar.tuplets.size(); ++t) {
    const score::Tuplet& tuplet = bar.tuplets[t];
    REQUIRE(tuplet.first > before);
    REQUIRE(tuplet.last >= tuplet.first);
    before = tuplet.last;
    Rational length;
    for (int i = 0; i < static_cast<int>(bar.events.size()); ++i) {
      const score::Event& event = bar.events[static_cast<std::size_t>(i)];
      const bool inside = tuplet.first <= i && i <= tuplet.last;
      REQUIRE((event.tuplet == static_cast<int>(t)) == inside);
      if (inside) length += event.length;
    }
    const Rational whole = tuplet.unit.length() * Rational(tuplet.normal);
    // Only a bar that begins or ends inside it cuts a tuplet.
    const bool cut = bar.begin > Rational(0) || bar.end < bar.meter.bar();
    REQUIRE((length == whole || (cut && length < whole)));
  }
}

void check_beams(const score::Bar& bar) {
  for (std::size_t i = 0; i < bar.events.size(); ++i) {
    const score::Event& event = bar.events[i];
    const int left = i > 0 ? bar.events[i - 1].beams_right : 0;
    REQUIRE(event.beams_left == left);
    REQUIRE(std::max(event.beams_left, event.beams_right) <= event.value.beams());
    REQUIRE((!event.rest || !event.beamed()));
    const bool at_middle = event.at == Rational(1, 2) && bar.meter == *theory::parse_meter("4/4");
    REQUIRE((!at_middle || event.tuplet || event.beams_left == 0));
  }
}

void check_example(const lesson::Example& from, const score::Example& example) {
  REQUIRE(example.bars.size() == from.music.bars.size());
  for (const score::Bar& bar : example.bars) {
    check_lengths(bar);
    check_tuplets(bar);
    check_beams(bar);
  }
  CHECK(sounding(example) == sounding(from.music));
  CHECK(silences(example.bars, [](const score::Event& event) { return event.rest; }) ==
        silences(from.music.bars, [](const lesson::Event& event) { return event.kind == lesson::EventKind::rest; }));
}

// A bar with onsets on any fractions that a grid can say.
lesson::Bar random_bar(test::Dice& dice) {
  static const std::vector<std::string> meters = {"4/4",  "3/4",     "2/4",   "2/2", "5/4",   "7/4",   "6/8", "9/8",
                                                  "12/8", "2+2+3/8", "3+2/8", "5/8", "6/4",   "3/2",   "3/8", "4/8",
                                                  "7/8",  "6/16",    "1/4",   "2/1", "5+3/8", "3+2/4", "8/8", "4/2"};
  static const std::vector<int> parts = {2, 2, 2, 3, 3, 4, 4, 5, 6, 7, 8, 9, 11, 12};
  const std::string meter = dice.pick(meters);
  const theory::Meter parsed = *theory::parse_meter(meter);
  std::set<Rational> onsets = {Rational(0)};
  const int parts_of_all = dice.pick(parts);
  for (int count = 0; count < parsed.upper(); ++count) {
    const int of = dice.chance(70) ? parts_of_all : dice.pick(parts);
    const int width = dice.chance(80) ? 1 : 2;
    if (dice.chance(30)) onsets.insert(parsed.count() * Rational(count));
    for (int part = 0; part < of; ++part) {
      const Rational at = parsed.count() * (Rational(count) + Rational(width * part, of));
      if (dice.chance(40) && at < parsed.bar()) onsets.insert(at);
    }
  }
  std::string events;
  for (const Rational onset : onsets) events += (dice.chance(20) ? " r" : " ") + onset.to_string();
  return score::test::bar(meter, events);
}

}  // namespace

TEST_CASE("random lessons: bars add up, values are exact, ties give back what was written") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    INFO("seed " << seed);
    const lesson::Lesson lesson = score::test::read_whole(test::random_lesson(seed));
    source::Diagnostics diagnostics;
    const score::Score score = score::build_score(lesson, diagnostics);
    CHECK_FALSE(diagnostics.has_errors());  // a spelling that changes nothing is warned of
    REQUIRE(score.examples.size() == lesson.examples.size());
    for (std::size_t i = 0; i < lesson.examples.size(); ++i) check_example(lesson.examples[i], score.examples[i]);
  }
}

TEST_CASE("random rhythms of any fractions: exact, or an error and nothing else") {
  int exact = 0;
  for (unsigned seed = 1; seed <= 1000; ++seed) {
    test::Dice dice(seed);
    const lesson::Lesson lesson = score::test::lesson_of({score::test::rhythm({random_bar(dice), random_bar(dice)})});
    INFO("seed " << seed);
    source::Diagnostics diagnostics;
    const score::Score score = score::build_score(lesson, diagnostics);
    if (diagnostics.has_errors()) continue;
    ++exact;
    check_example(lesson.examples.front(), score.examples.front());
  }
  // Three kinds of division in one beat can need values shorter than music has.
  CHECK(exact > 800);
}
