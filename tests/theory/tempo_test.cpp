#include "theory/tempo.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

using namespace fretsheaf::theory;

namespace {

using Rungs = std::vector<int>;

Tempo by_step(int from, int to, int step) {
  Tempo tempo;
  tempo.from = from;
  tempo.to = to;
  tempo.step = step;
  return tempo;
}

Tempo by_rungs(int from, int to, int rungs, RungSpacing spacing) {
  Tempo tempo;
  tempo.from = from;
  tempo.to = to;
  tempo.rungs = rungs;
  tempo.spacing = spacing;
  return tempo;
}

}  // namespace

TEST_CASE("A ladder climbs by its step and ends on the goal") {
  // The first is the lesson format's own example.
  CHECK(ladder_rungs(by_step(60, 108, 12)) == Rungs{60, 72, 84, 96, 108});
  CHECK(ladder_rungs(by_step(60, 100, 12)) == Rungs{60, 72, 84, 96, 100});
  CHECK(ladder_rungs(by_step(60, 61, 12)) == Rungs{60, 61});
  CHECK(ladder_rungs(by_step(60, 64, 2)) == Rungs{60, 62, 64});
}

TEST_CASE("A single tempo and a pair of tempos") {
  Tempo one;
  one.from = 92;
  one.to = 92;
  one.rungs = 1;
  CHECK(ladder_rungs(one) == Rungs{92});
  CHECK_FALSE(one.ladder());
  Tempo pair;
  pair.from = 80;
  pair.to = 100;
  pair.pair = true;
  CHECK(ladder_rungs(pair) == Rungs{80, 100});
  CHECK_FALSE(pair.ladder());
  CHECK(by_step(60, 108, 12).ladder());
}

TEST_CASE("So many rungs, evenly spaced by difference") {
  CHECK(ladder_rungs(by_rungs(60, 100, 5, RungSpacing::even)) == Rungs{60, 70, 80, 90, 100});
  CHECK(ladder_rungs(by_rungs(60, 100, 4, RungSpacing::even)) == Rungs{60, 73, 87, 100});
  CHECK(ladder_rungs(by_rungs(60, 100, 2, RungSpacing::even)) == Rungs{60, 100});
  CHECK(ladder_rungs(by_rungs(60, 100, 1, RungSpacing::even)) == Rungs{100});
  CHECK(ladder_rungs(by_rungs(60, 63, 7, RungSpacing::even)) == Rungs{60, 61, 62, 63});
}

TEST_CASE("So many rungs, evenly spaced by ratio") {
  // A doubling in twelve steps: 60·2^(n/12), the ratios of equal temperament.
  CHECK(ladder_rungs(by_rungs(60, 120, 13, RungSpacing::ratio)) ==
        Rungs{60, 64, 67, 71, 76, 80, 85, 90, 95, 101, 107, 113, 120});
  CHECK(ladder_rungs(by_rungs(50, 200, 3, RungSpacing::ratio)) == Rungs{50, 100, 200});
  CHECK(ladder_rungs(by_rungs(40, 135, 4, RungSpacing::ratio)) == Rungs{40, 60, 90, 135});
}

TEST_CASE("Every ladder rises, starts and ends where it says, and has each rung once") {
  for (const RungSpacing spacing : {RungSpacing::even, RungSpacing::ratio}) {
    for (int to = 20; to <= 400; to += 19) {
      for (int number = 2; number <= 60; ++number) {
        const Rungs rungs = ladder_rungs(by_rungs(20, to, number, spacing));
        CHECK(rungs.front() == 20);
        CHECK(rungs.back() == to);
        CHECK(rungs.size() <= static_cast<std::size_t>(number));
        for (std::size_t index = 1; index < rungs.size(); ++index) CHECK(rungs[index - 1] < rungs[index]);
      }
    }
  }
}

TEST_CASE("Beat units are named note values") {
  CHECK(parse_beat_unit("quarter") == Rational(1, 4));
  CHECK(parse_beat_unit("dotted quarter") == Rational(3, 8));
  CHECK(parse_beat_unit("half") == Rational(1, 2));
  CHECK(parse_beat_unit("dotted half") == Rational(3, 4));
  CHECK(parse_beat_unit("eighth") == Rational(1, 8));
  CHECK(parse_beat_unit("dotted eighth") == Rational(3, 16));
  CHECK(parse_beat_unit("sixteenth") == Rational(1, 16));
  CHECK(parse_beat_unit("whole") == Rational(1));
  for (const char* wrong :
       {"", "dotted", "dotted ", "Quarter", "quarter dotted", "dotted dotted quarter", "quarters"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_beat_unit(wrong));
  }
  for (const std::string& name : beat_unit_names()) CHECK(parse_beat_unit(name));
}

TEST_CASE("Feels are named") {
  for (const Feel feel : {Feel::straight, Feel::swing, Feel::shuffle, Feel::swing_16}) {
    CHECK(parse_feel(feel_name(feel)) == feel);
  }
  CHECK(feel_name(Feel::swing_16) == "swing-16");
  CHECK(feel_names().size() == 4);
  CHECK_FALSE(parse_feel("Swing"));
}

TEST_CASE("MusicXML counts quarters a minute") {
  // MusicXML 4.0, the sound element's tempo attribute: eighth = 138 is 69.
  CHECK(quarters_per_minute(138, Rational(1, 8)) == Rational(69));
  CHECK(quarters_per_minute(92, Rational(1, 4)) == Rational(92));
  CHECK(quarters_per_minute(60, Rational(3, 8)) == Rational(90));
  CHECK(quarters_per_minute(61, Rational(3, 8)).to_string() == "183/2");
}
