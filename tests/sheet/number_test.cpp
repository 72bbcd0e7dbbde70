#include "sheet/number.h"

#include <catch2/catch.hpp>
#include <limits>

using namespace fretsheaf::sheet;

TEST_CASE("A length is written with a point, its decimals rounded") {
  CHECK(fixed(1.5, 2) == "1.50");
  CHECK(fixed(595.2756, 2) == "595.28");
  CHECK(fixed(-12.345, 1) == "-12.3");
  CHECK(fixed(3, 0) == "3");
  CHECK(fixed(1e21, 1) == "1000000000000000000000.0");
}

TEST_CASE("There is no negative zero") {
  CHECK(fixed(-0.0, 2) == "0.00");
  CHECK(fixed(-0.004, 2) == "0.00");
  CHECK(fixed(-0.006, 2) == "-0.01");
  CHECK(shortest(-0.0001, 3) == "0");
}

TEST_CASE("A short length has no zeros at the end and keeps those before the point") {
  CHECK(shortest(1.50, 3) == "1.5");
  CHECK(shortest(100, 2) == "100");
  CHECK(shortest(100.004, 2) == "100");
  CHECK(shortest(0.25, 2) == "0.25");
  CHECK(shortest(120, 0) == "120");
}

TEST_CASE("The largest lengths fit, and what is no number is named") {
  CHECK(fixed(std::numeric_limits<double>::max(), 9).size() == 319);
  CHECK(fixed(-std::numeric_limits<double>::infinity(), 2) == "-inf");
  CHECK(shortest(std::numeric_limits<double>::quiet_NaN(), 2) == "nan");
}
