#include "typeface/bounds.h"

#include <catch2/catch.hpp>

using fretsheaf::typeface::Bounds;

TEST_CASE("A curve counts as far as it goes") {
  Bounds bounds;
  bounds.move_to(0, 0);
  bounds.curve_to(0, 4, 4, 4, 4, 0);
  REQUIRE(bounds.box().has_value());
  CHECK(bounds.box()->left == 0);
  CHECK(bounds.box()->right == 4);
  CHECK(bounds.box()->top == 0);
  CHECK(bounds.box()->bottom == Approx(3));  // of a cubic with both controls 4 away: 3/4 of it
}

TEST_CASE("A curve may turn back in one coordinate twice") {
  Bounds bounds;
  bounds.move_to(0, 0);
  bounds.curve_to(3, 1, -2, 2, 1, 3);
  CHECK(bounds.box()->left == Approx(0).margin(1e-9));
  CHECK(bounds.box()->right == Approx(1).margin(0.001));
}

TEST_CASE("A move alone draws nothing") {
  Bounds bounds;
  bounds.move_to(100, 100);
  CHECK_FALSE(bounds.box().has_value());
  bounds.move_to(1, 2);
  bounds.line_to(3, -4);
  CHECK(bounds.box()->left == 1);
  CHECK(bounds.box()->top == -4);
  CHECK(bounds.box()->bottom == 2);
}
