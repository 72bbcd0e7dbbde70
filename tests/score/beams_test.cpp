#include <catch2/catch.hpp>

#include "spell_out.h"

using namespace fretsheaf;
using score::test::bar;

namespace {

std::string beamed(std::string_view meter, std::string_view events) {
  return score::test::beams(score::test::built({bar(meter, events)}).bars.front());
}

const score::Bar& one(const score::Example& example) {
  return example.bars.front();
}

}  // namespace

// All of these are common practice.

TEST_CASE("in 4/4 eighths go in fours, and no beam crosses the middle") {
  CHECK(beamed("4/4", "0 1/8 1/4 3/8 1/2 5/8 3/4 7/8") == "(8 8 8 8) (8 8 8 8)");
  CHECK(beamed("4/4", "0 1/4 3/8 1/2 5/8 3/4") == "4 (8 8) (8 8) 4");
  CHECK(beamed("4/4", "0 1/8 3/8 1/2") == "8 4 8 2");
  CHECK(beamed("2/4", "0 1/8 1/4 3/8") == "(8 8 8 8)");
  CHECK(beamed("2/2", "0 1/8 1/4 3/8 1/2 5/8 3/4 7/8") == "(8 8 8 8) (8 8 8 8)");
}

TEST_CASE("beat by beat where sixteenths occur") {
  CHECK(beamed("4/4", "0 1/8 1/4 5/16 3/8 1/2 5/8 3/4 7/8") == "(8 8) (16 16 8) (8 8 8 8)");
  CHECK(beamed("4/4", "0 3/16 1/4 3/8 1/2") == "(8. 16) (8 8) 2");
  CHECK(beamed("2/2", "0 1/16 1/8 1/4 3/8 1/2") == "(16 16 8) (8 8) 2");
  CHECK(beamed("4/4", "0 1/16 3/16 1/4 1/2") == "(16 8 16) 4 2");
}

TEST_CASE("3/4, compound meters and groups") {
  CHECK(beamed("3/4", "0 1/8 1/4 3/8 1/2 5/8") == "(8 8 8 8 8 8)");
  CHECK(beamed("3/4", "0 1/4 3/8 1/2 5/8") == "4 (8 8) (8 8)");
  CHECK(beamed("6/8", "0 1/8 1/4 3/8 1/2 5/8") == "(8 8 8) (8 8 8)");
  CHECK(beamed("6/8", "0 3/16 1/4 3/8 5/8") == "(8. 16 8) 4 8");
  CHECK(beamed("3/8", "0 1/8 1/4") == "(8 8 8)");
  CHECK(beamed("2+2+3/8", "0 1/8 1/4 3/8 1/2 5/8 3/4") == "(8 8) (8 8) (8 8 8)");
  CHECK(beamed("3+2/8", "0 1/8 1/4 3/8 1/2") == "(8 8 8) (8 8)");
  CHECK(beamed("5/8", "0 1/8 1/4 3/8 1/2") == "(8 8) (8 8 8)");
  CHECK(beamed("5/4", "0 1/8 1/4 3/8 1/2 5/8 3/4 1") == "(8 8) (8 8) (8 8) 4 4");
}

TEST_CASE("rests break beams") {
  CHECK(beamed("4/4", "0 r1/8 1/4 3/8 1/2") == "8 r8 (8 8) 2");
  CHECK(beamed("4/4", "r0 1/8 1/4 3/8 1/2") == "r8 (8 8 8) 2");
  CHECK(beamed("6/8", "0 r1/8 1/4 3/8") == "8 r8 8 4.");
}

TEST_CASE("a tuplet goes by itself, and has a bracket unless one beam spans exactly it") {
  const auto bracket = [](std::string_view events) {
    return one(score::test::built({bar("4/4", events)})).tuplets.front().bracket;
  };
  CHECK(beamed("4/4", "0 1/8 1/4 1/3 5/12 1/2") == "(8 8) (8 8 8) 2");
  CHECK_FALSE(bracket("0 1/12 1/6 1/4"));
  CHECK_FALSE(bracket("0 1/10 1/5 3/10 2/5 1/2"));
  CHECK(bracket("0 1/6 1/4"));        // quarter and eighth
  CHECK(bracket("r0 1/12 1/6 1/4"));  // begins with a rest
  CHECK(bracket("0 r1/12 1/6 1/4"));
  CHECK(bracket("0 1/6 1/3 1/2"));  // quarters
}

TEST_CASE("thirty-seconds keep one beam from eighth to eighth") {
  const score::Bar bar32 = one(score::test::built({bar("2/4", "0 1/32 1/16 3/32 1/8 5/32 3/16 7/32 1/4")}));
  CHECK(bar32.events[2].beams_right == 3);
  CHECK(bar32.events[3].beams_right == 1);
  CHECK(bar32.events[4].beams_left == 1);
  CHECK(bar32.events[4].beams_right == 3);
  const score::Bar sixteenths = one(score::test::built({bar("2/4", "0 1/16 1/8 3/16 1/4")}));
  CHECK(sixteenths.events[1].beams_right == 2);
}

TEST_CASE("a dotted eighth and a sixteenth share one beam, and the other is partial") {
  const score::Bar dotted = one(score::test::built({bar("2/4", "0 3/16 1/4")}));
  CHECK(dotted.events[0].beams_right == 1);
  CHECK(dotted.events[1].beams_left == 1);
  CHECK(dotted.events[1].value.beams() == 2);
}

TEST_CASE("a partial beam points to what its note makes up a longer value with") {
  const auto left = [](std::string_view events, std::size_t event) {
    return one(score::test::built({bar("6/8", events)})).events[event].partial_left;
  };
  CHECK(left("0 3/16 1/4 3/8", 1));        // dotted eighth, sixteenth, eighth
  CHECK_FALSE(left("0 1/8 3/16 3/8", 1));  // eighth, sixteenth, dotted eighth
  CHECK_FALSE(left("0 1/16 1/4 3/8", 0));  // sixteenth, dotted eighth, eighth
  CHECK(left("0 1/8 5/16 3/8", 2));        // the last of its group
  const score::Bar dense = one(score::test::built({bar("2/4", "0 1/8 5/32 1/4")}));
  CHECK_FALSE(dense.events[1].partial_left);  // a thirty-second that begins a dotted sixteenth's pair
}
