#include "typeface/fixed_metrics.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::typeface;

TEST_CASE("In the fake, every character is half an em wide") {
  FixedMetrics metrics;
  const std::vector<FontId> fonts = {3, 4};
  const ShapedText shaped = metrics.shape("G \u266D7", TextStyle{fonts, 10, 0, false});
  CHECK(shaped.advance == 20);
  REQUIRE(shaped.runs.size() == 1);
  CHECK(shaped.runs[0].font == 3);
  CHECK(shaped.runs[0].glyphs[2].x == 10);
  CHECK(shaped.runs[0].glyphs[2].id == 0x266D);
  CHECK(shaped.runs[0].clusters[2].bytes == 3);
  CHECK(shaped.ink.top == -7);
  CHECK(shaped.ink.right == 20);
  CHECK(metrics.cap_height(0, 10) == 7);
  CHECK(metrics.x_height(0, 10) == 5);
}

TEST_CASE("In the fake, tracking, spaces and missing characters are as in the real set") {
  FixedMetrics metrics;
  metrics.missing = {U'#'};
  const std::vector<FontId> fonts = {0};
  const ShapedText shaped = metrics.shape(" a#b", TextStyle{fonts, 10, 1, false});
  CHECK(shaped.missing == std::vector<char32_t>{U'#'});
  CHECK(shaped.advance == 18);
  CHECK(shaped.ink.left == 6);
  CHECK(shaped.ink.right == 17);
  CHECK_FALSE(metrics.glyph(0, U'#').has_value());
}
