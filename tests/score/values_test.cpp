#include "score/values.h"

#include <catch2/catch.hpp>

#include "spell_out.h"

using namespace fretsheaf::score;
using test::bar;

namespace {

std::string written(std::string_view meter, std::string_view events) {
  return test::text(test::built({bar(meter, events)}).bars.front());
}

}  // namespace

TEST_CASE("a value lasts its part of a whole note, a dot adds half (common practice)") {
  CHECK(NoteValue{0, 0}.length() == Rational(1));
  CHECK(NoteValue{2, 0}.length() == Rational(1, 4));
  CHECK(NoteValue{2, 1}.length() == Rational(3, 8));
  CHECK(NoteValue{1, 2}.length() == Rational(7, 8));
  CHECK(NoteValue{3, 0}.beams() == 1);
  CHECK(NoteValue{2, 1}.beams() == 0);
  CHECK(NoteValue{6, 0}.beams() == 4);
  for (int log2 = 0; log2 <= shortest_log2; ++log2) {
    for (int dots = 0; dots <= 1; ++dots) {
      const NoteValue value{log2, dots};
      CHECK(value_of(value.length()) == value);
    }
  }
  CHECK_FALSE(value_of(Rational(5, 8)));
  CHECK_FALSE(value_of(Rational(1, 3)));
  CHECK_FALSE(value_of(Rational(2)));
  CHECK_FALSE(value_of(Rational(3)));
  CHECK_FALSE(value_of(Rational(1, 512)));
}

TEST_CASE("4/4 shows its middle and its beats (common practice)") {
  CHECK(written("4/4", "0") == "1");
  CHECK(written("4/4", "0 1/2") == "2 2");
  CHECK(written("4/4", "0 3/4") == "2. 4");
  CHECK(written("4/4", "0 1/4") == "4 4~ 2");
  CHECK(written("4/4", "0 1/4 3/4") == "4 2 4");        // simple syncopation
  CHECK(written("4/4", "0 3/8 1/2") == "4. 8 2");       // dotted quarter on beat 1
  CHECK(written("4/4", "0 1/8 3/8 1/2") == "8 4 8 2");  // eighth, quarter, eighth
  CHECK(written("4/4", "0 1/8 3/8 5/8 7/8") == "8 4 8~ 8 4 8");
  CHECK(written("4/4", "0 1/2 5/8") == "2 8 8~ 4");  // a dotted quarter off the beat shows beat 4
  CHECK(written("4/4", "0 5/8") == "2~ 8 8~ 4");
  CHECK(written("4/4", "0 1/16 1/4") == "16 8. 4~ 2");
  CHECK(written("4/4", "0 3/16 1/4 1/2") == "8. 16 4 2");
  CHECK(written("4/4", "0 3/16 5/16 1/2") == "8. 16~ 16 8. 2");
  CHECK(written("4/4", "0 7/16") == "4~ 8. 16~ 2");
}

TEST_CASE("rests keep the beats more strictly than notes (common practice)") {
  CHECK(written("4/4", "r0") == "rR");
  CHECK(written("4/4", "0 r1/4") == "4 r4 r2");
  CHECK(written("4/4", "0 r1/4 3/4") == "4 r4 r4 4");
  CHECK(written("4/4", "r0 3/4") == "r2 r4 4");
  CHECK(written("4/4", "0 r1/8 1/2") == "8 r8 r4 2");
  CHECK(written("4/4", "r0 3/16 1/4") == "r8 r16 16 4~ 2");
  CHECK(written("3/4", "0 r1/4") == "4 r4 r4");
  CHECK(written("3/4", "r0") == "rR");
  CHECK(written("6/8", "0 r3/8") == "4. r4.");
  CHECK(written("6/8", "r0 1/4 3/8") == "r4 8 4.");
  CHECK(written("6/8", "0 r1/8 3/8") == "8 r8 r8 4.");
  CHECK(written("12/8", "0 r3/8") == "4. r4. r2.");
}

TEST_CASE("triple, compound, grouped and odd meters (common practice)") {
  CHECK(written("3/4", "0") == "2.");
  CHECK(written("3/4", "0 1/4") == "4 2");
  CHECK(written("3/4", "0 3/8 1/2") == "4. 8 4");
  CHECK(written("3/4", "0 1/4 5/8") == "4 4. 8");
  CHECK(written("3/4", "0 3/8") == "4. 8~ 4");
  CHECK(written("3/4", "0 1/8 3/8 1/2") == "8 4 8 4");
  CHECK(written("3/4", "0 5/8") == "2~ 8 8");
  CHECK(written("2/4", "0 1/8") == "8 8~ 4");
  CHECK(written("6/8", "0") == "2.");
  CHECK(written("6/8", "0 1/4 3/8 5/8") == "4 8 4 8");
  CHECK(written("6/8", "0 1/8 3/8") == "8 4 4.");
  CHECK(written("6/8", "0 1/4 1/2") == "4 8~ 8 4");  // the middle shows
  CHECK(written("6/8", "0 1/8") == "8 4~ 4.");
  CHECK(written("6/8", "0 3/16 1/4 3/8") == "8. 16 8 4.");
  CHECK(written("9/8", "0") == "2.~ 4.");
  CHECK(written("12/8", "0") == "1.");
  CHECK(written("12/8", "0 3/8 3/4") == "4. 4. 2.");
  CHECK(written("12/8", "0 3/8 9/8") == "4. 4.~ 4. 4.");  // as in 4/4, but dotted beats are not syncopated
  CHECK(written("2/2", "0 1/4 3/4") == "4 2 4");
  CHECK(written("3/2", "0") == "1.");
  CHECK(written("4/2", "0") == "1~ 1");
  CHECK(written("5/4", "0") == "2.~ 2");
  CHECK(written("3+2/4", "0") == "2.~ 2");
  CHECK(written("2+3/4", "0") == "2~ 2.");
  CHECK(written("2+2+3/8", "0") == "2~ 4.");
  CHECK(written("2+2+3/8", "0 1/4 1/2") == "4 4 4.");
  CHECK(written("3+2/8", "0 3/8") == "4. 4");
  CHECK(written("5/8", "0") == "4~ 4.");
  CHECK(written("7/4", "0") == "2.~ 2~ 2");
  CHECK(written("6/4", "0 3/4") == "2. 2.");
  CHECK(written("1/1", "0 1/2") == "2 2");
  CHECK(written("2/1", "0") == "1~ 1");
}

TEST_CASE("bars that begin late or end early keep their places in the full bar") {
  const auto part = [](std::string_view events, Rational begin, Rational end) {
    return test::text(test::built({bar("4/4", events, begin, end)}).bars.front());
  };
  CHECK(part("3/4", Rational(3, 4), Rational(1)) == "4");
  CHECK(part("5/8", Rational(5, 8), Rational(1)) == "8~ 4");
  CHECK(part("0", Rational(0), Rational(3, 4)) == "2.");
  CHECK(part("r0", Rational(0), Rational(3, 4)) == "r2 r4");  // no whole-bar rest: the bar is not whole
  CHECK(part("0", Rational(0), Rational(7, 8)) == "2~ 4.");
}

TEST_CASE("what is held over a bar line is tied") {
  const Example example = test::built({bar("4/4", "0 1/2"), bar("4/4", "=0 1/4 r1/2"), bar("4/4", "r0")});
  CHECK(test::text(example.bars[0]) == "2 2~");
  CHECK(test::text(example.bars[1]) == "4 4 r2");
  CHECK(example.bars[1].events[0].tie_from);
  CHECK_FALSE(example.bars[1].events[0].struck);
  CHECK_FALSE(example.bars[1].events[1].tie_from);
  CHECK(example.bars[2].events[0].whole_bar_rest);
  CHECK(example.bars[2].events[0].length == Rational(1));
}
