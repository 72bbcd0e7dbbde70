#include <catch2/catch.hpp>

#include "score/build.h"
#include "spell_out.h"

using namespace fretsheaf;
using score::Rational;
using score::test::bar;

namespace {

std::string written(std::string_view meter, std::string_view events) {
  return score::test::text(score::test::built({bar(meter, events)}).bars.front());
}

}  // namespace

TEST_CASE("equal parts that fill one, two or four beats are one tuplet") {
  CHECK(written("4/4", "0 1/12 1/6 1/4") == "[3:2 8 8 8] 4~ 2");
  CHECK(written("4/4", "0 1/6 1/3 1/2") == "[3:2 4 4 4] 2");
  CHECK(written("4/4", "0 1/3 2/3") == "[3:2 2 2 2]");
  CHECK(written("4/4", "0 1/20 1/10 3/20 1/5 1/4") == "[5:4 16 16 16 16 16] 4~ 2");
  CHECK(written("4/4", "0 1/5 2/5 3/5 4/5") == "[5:4 4 4 4 4 4]");
  CHECK(written("4/4", "0 1/24 1/12 1/8 1/6 5/24 1/4") == "[6:4 16 16 16 16 16 16] 4~ 2");
  CHECK(written("4/4", "0 1/28 1/14 3/28 1/7 5/28 3/14 1/4") == "[7:4 16 16 16 16 16 16 16] 4~ 2");
  CHECK(written("2/4", "0 1/14 1/7 3/14 2/7 5/14 3/7") == "[7:4 8 8 8 8 8 8 8]");
  CHECK(written("4/4", "0 1/36 1/18 1/12 1/9 5/36 1/6 7/36 2/9 1/4") == "[9:8 32 32 32 32 32 32 32 32 32] 4~ 2");
  // Not one tuplet of twelve, but one of three a beat.
  CHECK(written("2/4", "0 1/12 1/6 1/4 1/3 5/12") == "[3:2 8 8 8] [3:2 8 8 8]");
  // Neighbouring beats anywhere in the bar.
  CHECK(written("4/4", "0 1/4 5/12 7/12 3/4") == "4 [3:2 4 4 4] 4");
  CHECK(written("3/4", "0 1/6 1/3 1/2") == "[3:2 4 4 4] 4");
  CHECK(written("3/4", "0 1/4 5/12 7/12") == "4 [3:2 4 4 4]");
  CHECK(written("2/2", "0 1/6 1/3 1/2") == "[3:2 4 4 4] 2");
}

TEST_CASE("a tuplet's parts may be unequal, rests, or held in and out") {
  CHECK(written("4/4", "0 1/6 1/4") == "[3:2 4 8] 4~ 2");
  CHECK(written("4/4", "0 1/12 1/4") == "[3:2 8 4] 4~ 2");
  CHECK(written("4/4", "r0 1/12 1/6 1/4") == "[3:2 r8 8 8] 4~ 2");
  CHECK(written("4/4", "0 r1/12 1/6 1/4") == "[3:2 8 r8 8] 4~ 2");
  CHECK(written("4/4", "r0 1/6 1/4") == "[3:2 r4 8] 4~ 2");
  CHECK(written("4/4", "0 r1/12 1/4") == "[3:2 8 r8 r8] 4~ 2");
  CHECK(written("4/4", "0 1/12 1/8 1/6 1/4") == "[3:2 8 16 16 8] 4~ 2");
  CHECK(written("4/4", "0 1/12 5/24 1/4") == "[3:2 8 8. 16] 4~ 2");
  CHECK(written("4/4", "0 1/3 5/12 1/2") == "4~ [3:2 8 8 8] 2");          // held in
  CHECK(written("4/4", "0 1/12 1/6 3/8 1/2") == "[3:2 8 8 8~] 8 8 2");    // held out
  CHECK(written("4/4", "0 1/6 1/3 5/12 1/2") == "[3:2 4 4 8 8] 2");       // divided again
  CHECK(written("4/4", "0 1/6 1/4 1/3 1/2") == "[3:2 4 8] [3:2 8 4] 2");  // the middle is struck
  CHECK(written("4/4", "0 1/6 5/24 1/3 5/12 1/2") == "[3:2 4 16 8. 8 8] 2");
}

TEST_CASE("tuplets of part of a beat") {
  CHECK(written("4/4", "0 1/8 1/6 5/24 1/4") == "8 [3:2 16 16 16] 4~ 2");
  CHECK(written("4/4", "0 1/24 1/12 1/8 1/4") == "[3:2 16 16 16] 8 4~ 2");
  CHECK(written("4/4", "0 1/24 1/12 1/8 1/6 1/4") == "[3:2 16 16 16 16 8] 4~ 2");
}

TEST_CASE("dotted beats: duplets, quadruplets, triplets of a count (common practice)") {
  CHECK(written("6/8", "0 3/16 3/8") == "[2:3 8 8] 4.");
  CHECK(written("6/8", "0 3/32 3/16 9/32 3/8") == "[4:3 8 8 8 8] 4.");
  CHECK(written("6/8", "0 3/40 3/20 9/40 3/10 3/8") == "[5:3 8 8 8 8 8] 4.");
  CHECK(written("6/8", "0 1/24 1/12 1/8 3/8") == "[3:2 16 16 16] 4 4.");
  CHECK(written("6/8", "0 1/24 1/12 1/8 1/6 5/24 1/4 7/24 1/3 3/8") ==
        "[3:2 16 16 16] [3:2 16 16 16] [3:2 16 16 16] 4.");
  CHECK(written("6/8", "0 1/12 1/6 1/4 3/8") == "[3:2 8 8 8] 8 4.");
  CHECK(written("6/8", "0 1/16 1/8 3/8") == "16 16 4 4.");
  CHECK(written("9/8", "0 3/8 9/16 3/4") == "4. [2:3 8 8] 4.");
}

TEST_CASE("what is not regular is a tuplet over the beat, exact") {
  CHECK(written("4/4", "0 1/12 3/16 1/4") == "[3:2 8 8~ 32 16.] 4~ 2");
  CHECK(written("4/4", "0 1/20 1/12 1/4") == "[15:8 16. 16 16.~ 8~ 16.] 4~ 2");
  CHECK(written("4/4", "0 1/12 1/8 1/4") == "[3:2 8 16] 8 4~ 2");
}

TEST_CASE("a pickup may begin inside a tuplet") {
  const auto pickup = bar("4/4", "11/12", Rational(11, 12), Rational(1));
  CHECK(score::test::text(score::test::built({pickup}).bars.front()) == "[3:2 8]");
}

TEST_CASE("what no value can show is an error at its place") {
  lesson::Bar wrong = bar("4/4", "0 1/4 513/2048");
  wrong.events[1].range = {70, 75, 0};
  wrong.events[2].range = {80, 85, 0};
  source::Diagnostics diagnostics;
  score::build_score(score::test::lesson_of({score::test::rhythm({wrong})}), diagnostics);
  REQUIRE(diagnostics.list().size() == 2);
  CHECK(diagnostics.list()[0].severity == source::Severity::error);
  CHECK(diagnostics.list()[0].code == source::Code::unwritable_value);
  CHECK(diagnostics.list()[0].range == source::Range{70, 75, 0});
  CHECK(diagnostics.list()[0].message == "no note values can be written for what lasts 1/2048 of a whole note here");
  CHECK(diagnostics.list()[0].help == "count it in parts of the beat that a 256th note can still show");
  CHECK(diagnostics.list()[1].range == source::Range{80, 85, 0});
}
