#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;
using Said = std::vector<std::string>;

TEST_CASE("the format's own example, event by event") {
  const Reading r = read(
      "count  | 1   2   3   4   | 1   2   3 & 4   | 1  (2)  3  la li 4 | 1   & 2 (3)    :|\n"
      "chord  | i7              | IV7             | i7                 | v7              |\n"
      "mark   | mf              | <----------     | f                  | p               |\n"
      "G      |                 |                 |                  2 |                 |\n"
      "D      | 0               |     2   3   4   |         0  3  2    |                 |\n"
      "A      |     3       2   | 5         x     | 5                  | 0  h2 3>        |\n"
      "E      |         3       |                 |                    |                 |\n");
  CHECK(r.said == Said{});
  REQUIRE(r.music.bars.size() == 4);
  CHECK(bar_text(r.music.bars[0]) == "0+1/4 2:0, 1/4+1/4 3:3, 1/2+1/4 4:3, 3/4+1/4 3:2");
  CHECK(bar_text(r.music.bars[1]) == "0+1/4 3:5, 1/4+1/4 2:2, 1/2+1/8 2:3, 5/8+1/8 3:x, 3/4+1/4 2:4");
  CHECK(bar_text(r.music.bars[2]) == "0+1/4 3:5, 1/4+1/4 rest, 1/2+1/12 2:0, 7/12+1/12 2:3, 2/3+1/12 2:2, 3/4+1/4 1:2");
  CHECK(bar_text(r.music.bars[3]) == "0+1/8 3:0, 1/8+1/8 3:h2, 1/4+1/4 3:3>, 1/2+1/2 rest");
  CHECK(r.music.bars[3].right == BarSign::repeat_end);
  REQUIRE(r.music.dynamics.size() == 3);
  REQUIRE(r.music.spans.size() == 1);
  CHECK(r.music.spans[0].first.bar == 1);
  CHECK(r.music.spans[0].last.at.to_string() == "5/8");
}
