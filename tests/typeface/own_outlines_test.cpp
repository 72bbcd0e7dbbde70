#include "typeface/own_outlines.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace fretsheaf::typeface;

namespace {

// The signed area of a sign made of straight lines: holes run the other way and take theirs away.
double area(OwnSign sign) {
  double twice = 0;
  OutlineSegment start;
  OutlineSegment last;
  for (const OutlineSegment& segment : own_outline(sign)) {
    if (segment.kind == OutlineSegment::Kind::move) {
      start = segment;
    } else {
      const OutlineSegment& end = segment.kind == OutlineSegment::Kind::close ? start : segment;
      twice += last.x * end.y - end.x * last.y;
    }
    last = segment;
  }
  return std::abs(twice / 2);
}

}  // namespace

TEST_CASE("Every sign of our own has an outline that is closed") {
  for (int sign = 0; sign <= static_cast<int>(OwnSign::stroke_down); ++sign) {
    INFO(sign);
    const auto outline = own_outline(static_cast<OwnSign>(sign));
    REQUIRE(outline.size() >= 4);
    CHECK(outline.front().kind == OutlineSegment::Kind::move);
    CHECK(outline.back().kind == OutlineSegment::Kind::close);
  }
}

// The measures are the look's; the areas are worked out by hand from them.
TEST_CASE("Slashes, diamond and clef have the measures of the look") {
  CHECK(area(OwnSign::slash_filled) == Approx(0.7 * 2));
  CHECK(area(OwnSign::slash_open) == Approx(1.4 * 2 - 0.84 * 1.6));
  CHECK(area(OwnSign::rhythm_clef) == Approx(2 * 0.36 * 2));
  CHECK(area(OwnSign::diamond) == Approx(4 * std::sqrt(2) * 0.72 * 0.15).epsilon(0.001));
  CHECK(area(OwnSign::dead) == Approx(2 * 2 * std::sqrt(2) * 0.62 * 0.2 - 0.2 * 0.2).epsilon(0.001));
  CHECK(area(OwnSign::stroke_down) == Approx(0.36 * 1.0 + 2 * 0.12 * 0.59));
}

TEST_CASE("Outlines of our own grow downward, as the page does") {
  const auto slash = own_outline(OwnSign::slash_filled);
  CHECK(slash[0].x == -0.95);
  CHECK(slash[0].y == 1);
  CHECK(slash[2].x == 0.95);
  CHECK(slash[2].y == -1);
  const auto parenthesis = own_outline(OwnSign::parenthesis_left);
  CHECK(parenthesis[1].kind == OutlineSegment::Kind::curve);
  CHECK(parenthesis[1].x1 == -1.386);
  CHECK(parenthesis[1].y2 == 0.414);
}
