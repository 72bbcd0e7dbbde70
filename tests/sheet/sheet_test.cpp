#include "sheet/sheet.h"

#include <catch2/catch.hpp>

#include "sheet/walk.h"

using namespace fretsheaf::sheet;

namespace {

GlyphRun digit(double x, double y) {
  return {Part::digit, 0, 10, {}, {{45, x, y}}, "5", {{1, 1}}};
}

Path curve() {
  Path path;
  path.part = Part::tie;
  path.segments = {{Segment::Kind::move, {1, 2}, {}, {}},
                   {Segment::Kind::curve, {7, 8}, {3, 4}, {5, 6}},
                   {Segment::Kind::line, {9, 10}, {}, {}},
                   {Segment::Kind::close, {}, {}, {}}};
  path.fill = Color{9, 84, 97};
  return path;
}

Sheet small_sheet() {
  Group event;
  event.event = EventInfo{1, "1/4", "tab", 2, 20};
  event.items = {digit(18, 30)};
  Group example;
  example.tag = Tag::figure;
  example.alternative = "One note";
  example.example = ExampleInfo{1, "The \"pulse\""};
  example.items = {Rule{Part::tab_line, {10, 30}, {90, 30}, 0.5, {}, 3, 2.4}, event, curve()};
  GlyphRun sign{Part::clef, 7, 22, {1, 2, 3}, {{300, 5, 6}, {301, 8, 6}}, "", {}};
  Sheet sheet;
  sheet.title = "Low tide";
  sheet.author = "Eelgrass Strings";
  sheet.language = "en";
  sheet.pages = {{100, 200, {example, sign, Link{{1, 2, 3, 4}, "https://example.org/tide"}}}};
  sheet.bookmarks = {{"The pulse\n", 0, 12.5}};
  return sheet;
}

}  // namespace

TEST_CASE("Every part has its name") {
  CHECK(std::string(part_name(Part::text)) == "text");
  CHECK(std::string(part_name(Part::staff_line)) == "staff_line");
}

TEST_CASE("The dump writes a line an item, indented by group") {
  CHECK(dump(small_sheet(), {"inter-semibold"}) ==
        R"(sheet "Low tide" author "Eelgrass Strings" language "en"
page 1 100.00 200.00
  figure alternative "One note" example 1 "The \"pulse\""
    rule tab_line 10.00 30.00 90.00 30.00 width 0.50 dash 3.00 gap 2.40
    group event bar 1 at 1/4 tab line 2 x 20.00
      glyphs digit inter-semibold 10.00 "5" at 18.00 30.00
    path tie fill in rgb 9 84 97 M 1.00 2.00 C 3.00 4.00 5.00 6.00 7.00 8.00 L 9.00 10.00 Z
  glyphs clef font-7 22.00 at 5.00 6.00 to 8.00 #300 #301 in rgb 1 2 3
  link 1.00 2.00 3.00 4.00 "https://example.org/tide"
bookmark page 1 y 12.50 "The pulse\x0a"
)");
}

TEST_CASE("Moving a group moves all that it holds, and the centre of its event") {
  Sheet sheet = small_sheet();
  translate(sheet.pages[0].items, 100, -2);
  const std::string moved = dump(sheet, {"inter-semibold"});
  CHECK(moved.find("rule tab_line 110.00 28.00 190.00 28.00") != std::string::npos);
  CHECK(moved.find("event bar 1 at 1/4 tab line 2 x 120.00") != std::string::npos);
  CHECK(moved.find("\"5\" at 118.00 28.00") != std::string::npos);
  CHECK(moved.find("M 101.00 0.00 C 103.00 2.00 105.00 4.00 107.00 6.00 L 109.00 8.00 Z") != std::string::npos);
  CHECK(moved.find("at 105.00 4.00 to 108.00") != std::string::npos);
  CHECK(moved.find("link 101.00 0.00 103.00 2.00") != std::string::npos);
}

TEST_CASE("The walk visits every item with the groups that hold it") {
  const Sheet sheet = small_sheet();
  std::vector<std::pair<std::size_t, std::size_t>> seen;  // kind of item, depth
  walk(sheet.pages[0], [&](const Item& item, GroupChain groups) { seen.emplace_back(item.index(), groups.size()); });
  const std::vector<std::pair<std::size_t, std::size_t>> expected = {{5, 0}, {1, 1}, {5, 1}, {0, 2},
                                                                     {2, 1}, {0, 0}, {3, 0}};
  CHECK(seen == expected);
  std::string event_staff;
  walk(sheet.pages[0], [&](const Item& item, GroupChain groups) {
    const auto* run = std::get_if<GlyphRun>(&item);
    if (run != nullptr && run->part == Part::digit) event_staff = groups.back()->event->staff;
  });
  CHECK(event_staff == "tab");
}
