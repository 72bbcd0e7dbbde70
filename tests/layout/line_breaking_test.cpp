#include "layout/line_breaking.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::layout;

namespace {

// Where the lines of eight pieces end if those that may be are only these.
std::vector<int> ends_of(const std::vector<LineChoice>& lines, const Unevenness& unevenness) {
  Choices choices(8);
  for (const LineChoice& line : lines) choices[static_cast<std::size_t>(line.first)].push_back(line);
  std::vector<int> ends;
  for (const LineChoice& line : cheapest(choices, unevenness)) ends.push_back(line.last);
  return ends;
}

}  // namespace

TEST_CASE("lines of music are chosen so that all of them together cost least") {
  // The cheapest first line leads to a dear second one.
  CHECK(ends_of({{0, 4, 0, 1}, {0, 3, 0, 2}, {5, 7, 0, 5}, {4, 7, 0, 2}}, {}) == std::vector<int>{3, 7});
  CHECK(ends_of({{0, 3, 0, 1}}, {}).empty());
}

TEST_CASE("neighbouring lines of music are stretched alike where that can be had") {
  const std::vector<LineChoice> lines = {{0, 4, 0.5, 1}, {5, 7, -0.5, 1}, {0, 3, 0, 1.1}, {4, 7, 0, 1.1}};
  CHECK(ends_of(lines, {}) == std::vector<int>{4, 7});
  CHECK(ends_of(lines, {1, 0}) == std::vector<int>{3, 7});
}

TEST_CASE("a last line that is not full has not far fewer bars than the one before it") {
  const std::vector<LineChoice> lines = {
      {0, 5, 0, 1, false, 6}, {6, 7, 0, 1, true, 2}, {0, 4, 0, 1.1, false, 5}, {5, 7, 0, 1.1, true, 3}};
  CHECK(ends_of(lines, {}) == std::vector<int>{5, 7});
  CHECK(ends_of(lines, {0, 0.3}) == std::vector<int>{4, 7});
}
