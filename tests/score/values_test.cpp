#include <catch2/catch.hpp>

#include "score/values.h"
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
  CHECK(written("4/4", "0 1/4 3/4") == "4 2 4");          // simple syncopation
  CHECK(written("4/4", "0 3/8 1/2") == "4. 8 2");         // dotted quarter on beat 1
  CHECK(written("4/4", "0 1/8 3/8 1/2") == "8 4 8 2");    // eighth, quarter, eighth
  CHECK(written("4/4", "0 1/8 3/8 5/8 7/8") == "8 4 8~ 8 4 8");
  CHECK(written("4/4", "0 1/2 5/8") == "2 8 8~ 4");       // a dotted quarter off the beat shows beat 4
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
