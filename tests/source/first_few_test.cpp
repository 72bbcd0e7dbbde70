#include "source/first_few.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using fretsheaf::source::first_few;

TEST_CASE("a list names all that it may, and counts the rest") {
  const std::vector<std::string> names = {"tide", "shore", "fog"};
  CHECK(first_few(names, 4) == "tide, shore, fog");
  CHECK(first_few(names, 3) == "tide, shore, fog");
  CHECK(first_few(names, 2) == "tide, shore and 1 more");
  CHECK(first_few(names, 1) == "tide and 2 more");
  CHECK(first_few({}, 2).empty());
}
