#include "render/ink.h"

#include <catch2/catch.hpp>

#include "typeface/fixed_metrics.h"

using namespace fretsheaf;
using namespace fretsheaf::render;

namespace {

void check_box(const std::optional<sheet::Box>& box, double left, double top, double right, double bottom) {
  REQUIRE(box.has_value());
  CHECK(box->left == Approx(left));
  CHECK(box->top == Approx(top));
  CHECK(box->right == Approx(right));
  CHECK(box->bottom == Approx(bottom));
}

}  // namespace

TEST_CASE("Glyphs count by their outlines, spaces not at all") {
  typeface::FixedMetrics metrics;
  const sheet::GlyphRun run{sheet::Part::text, 0, 10, {}, {{'a', 10, 50}, {' ', 15, 50}, {'b', 20, 50}}, "a b", {}};
  check_box(ink_box(run, metrics), 10, 43, 25, 50);
  const sheet::GlyphRun space{sheet::Part::text, 0, 10, {}, {{' ', 10, 50}}, " ", {}};
  CHECK_FALSE(ink_box(space, metrics).has_value());
}

TEST_CASE("A rule has its width across and none beyond its ends") {
  typeface::FixedMetrics metrics;
  check_box(ink_box(sheet::Rule{sheet::Part::rule, {10, 20}, {50, 20}, 2, {}, 0, 0}, metrics), 10, 19, 50, 21);
  check_box(ink_box(sheet::Rule{sheet::Part::rule, {10, 60}, {10, 20}, 3, {}, 0, 0}, metrics), 8.5, 20, 11.5, 60);
  check_box(ink_box(sheet::Rule{sheet::Part::rule, {0, 0}, {30, 40}, 5, {}, 0, 0}, metrics), -2, -1.5, 32, 41.5);
}

TEST_CASE("A path counts as far as its curves go, with half its stroke") {
  typeface::FixedMetrics metrics;
  sheet::Path path;
  path.segments = {{sheet::Segment::Kind::move, {0, 0}, {}, {}},
                   {sheet::Segment::Kind::curve, {4, 0}, {0, 4}, {4, 4}},
                   {sheet::Segment::Kind::close, {}, {}, {}}};
  CHECK_FALSE(ink_box(path, metrics).has_value());
  path.fill = sheet::Color{};
  check_box(ink_box(path, metrics), 0, 0, 4, 3);
  path.stroke = sheet::Color{};
  path.stroke_width = 1;
  check_box(ink_box(path, metrics), -0.5, -0.5, 4.5, 3.5);
}

TEST_CASE("A group has the ink of all that it holds, and links have none") {
  typeface::FixedMetrics metrics;
  sheet::Group inner;
  inner.items = {sheet::Rule{sheet::Part::rule, {0, 0}, {5, 0}, 2, {}, 0, 0},
                 sheet::Link{{0, 0, 500, 500}, "https://x.y"}};
  sheet::Group group;
  group.items = {inner, sheet::Rule{sheet::Part::rule, {7, 9}, {8, 9}, 2, {}, 0, 0}};
  check_box(ink_box(group, metrics), 0, -1, 8, 10);
  CHECK_FALSE(ink_box(sheet::Group{}, metrics).has_value());
}
