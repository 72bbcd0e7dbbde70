#include "layout/form_chart.h"

#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <variant>

#include "layout/ink.h"
#include "layout/page_fixture.h"
#include "theory/chord.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Block;
using layout::Blocks;
using sheet::Part;

namespace {

score::FormCell cell(const std::string& chords, bool here = false, bool begins_line = false) {
  score::FormCell made;
  made.here = here;
  made.begins_line = begins_line;
  for (std::size_t at = 0; at < chords.size();) {
    const std::size_t end = std::min(chords.find(',', at), chords.size());
    made.chords.emplace_back(std::get<theory::Chord>(*theory::parse_chord(chords.substr(at, end - at))));
    at = end + 1;
  }
  return made;
}

// Eight bars in two lines, the first line marked.
score::FormChart two_lines() {
  score::FormChart chart;
  for (int i = 0; i < 8; ++i) chart.bars.push_back(cell("Dm7", i < 4, i % 4 == 0));
  return chart;
}

// The chart of example 2.
Blocks blocks_of(score::FormChart chart, double width, Fixed& fixed) {
  score::Example example;
  example.number = 2;
  example.form = std::move(chart);
  return layout::form_blocks(example, {}, width, fixed.setter);
}

std::vector<sheet::Path> shades(const Block& block) {
  std::vector<sheet::Path> found;
  for (const auto& path : all_of<sheet::Path>(block.items)) {
    if (path.part == Part::form_shade) found.push_back(path);
  }
  return found;
}

// Where upright lines stand.
std::set<double> uprights(const Block& block) {
  std::set<double> found;
  for (const auto& rule : all_of<sheet::Rule>(block.items)) {
    if (rule.from.x == rule.to.x) found.insert(rule.from.x);
  }
  return found;
}

}  // namespace

TEST_CASE("a chart in a column is the table's: four bars of 51 by 25 after a label of 28") {
  Fixed fixed;
  const Blocks blocks = blocks_of(two_lines(), 232, fixed);
  REQUIRE(blocks.size() == 4);
  CHECK(spelled(blocks[0].items) == "Formonce through = 8 bars");
  CHECK(spelled(blocks[1].items) == "1Dm7hereDm7hereDm7hereDm7here");
  CHECK(spelled(blocks[2].items) == "5Dm7Dm7Dm7Dm7");
  CHECK(spelled(blocks[3].items) == "Example 2 goes here");
  CHECK(blocks[1].gap == 11);
  CHECK(blocks[2].gap == 0);
  CHECK(blocks[1].height == 25);
  CHECK(uprights(blocks[1]) == std::set<double>{28, 79, 130, 181, 232});
  CHECK(blocks[0].keep_with_next);
  CHECK(blocks[1].keep_with_next);
}

TEST_CASE("the example's bars are shaded no darker than 87 % white, and say so in words") {
  Fixed fixed;
  const Blocks blocks = blocks_of(two_lines(), 488, fixed);
  REQUIRE(shades(blocks[1]).size() == 4);
  CHECK(shades(blocks[2]).empty());
  CHECK(shades(blocks[3]).size() == 1);
  for (const sheet::Path& path : shades(blocks[1])) CHECK(path.fill == sheet::Color{0xDE, 0xDE, 0xDE});
  score::FormChart plain = two_lines();
  for (score::FormCell& bar : plain.bars) bar.here = false;
  CHECK(blocks_of(plain, 488, fixed).size() == 3);  // nothing to explain
}

TEST_CASE("two chords share a bar in equal parts, and long ones widen every bar") {
  Fixed fixed;
  score::FormChart chart;
  chart.bars = {cell("Dm7,G7", false, true), cell("Cmaj7")};
  const Blocks blocks = blocks_of(chart, 488, fixed);
  const auto lines = uprights(blocks[1]);
  REQUIRE(lines.size() == 3);
  const double width = *std::next(lines.begin()) - *lines.begin();
  std::vector<double> begins;
  for (const auto& run : all_of<sheet::GlyphRun>(blocks[1].items)) {
    if (run.part == Part::chord_symbol && (run.text == "D" || run.text == "G" || run.text.starts_with("Dm"))) {
      begins.push_back(run.glyphs[0].x - 28);
    }
  }
  REQUIRE(begins.size() == 2);
  CHECK(begins[0] < width / 2);
  CHECK(begins[1] > width / 2);
  score::FormChart wide;
  wide.bars = {cell("C#m7b5,F#7b9,Bmaj13", false, true), cell("C")};
  const auto wider = uprights(blocks_of(wide, 488, fixed)[1]);
  CHECK(*std::next(wider.begin()) - *wider.begin() > width);
}

TEST_CASE("a line too long for the width goes on below, and no bar is lost") {
  Fixed fixed;
  for (const double width : {488.0, 232.0}) {
    for (std::size_t count = 1; count <= 40; ++count) {
      score::FormChart chart;
      for (std::size_t i = 0; i < count; ++i) chart.bars.push_back(cell(i % 5 == 0 ? "Dm7,G7" : "Am7", i == 0, i == 0));
      std::size_t symbols = 0;
      for (const Block& block : blocks_of(chart, width, fixed)) {
        const auto ink = layout::ink_of(block.items, fixed.type);
        CHECK(ink->right <= width + 0.5);
        for (const auto& run : all_of<sheet::GlyphRun>(block.items)) {
          if (run.part == Part::chord_symbol && run.text.starts_with("7")) ++symbols;
        }
      }
      CHECK(symbols == count + (count + 4) / 5);
    }
  }
}

TEST_CASE("a repeated bar is a sign, repeats have thick lines and dots") {
  Fixed fixed;
  score::FormChart chart;
  chart.bars = {cell("Dm7", false, true), cell("Dm7")};
  chart.bars[0].repeat_begin = true;
  chart.bars[1].repeat_end = true;
  chart.bars[1].same_as_previous = true;
  const Block block = blocks_of(chart, 488, fixed)[1];
  CHECK(spelled(block.items) == "1Dm7");
  std::size_t dots = 0;
  for (const auto& path : all_of<sheet::Path>(block.items)) dots += path.part == Part::repeat_dot ? 1 : 0;
  CHECK(dots == 4);
}

TEST_CASE("signs and key of a chart grow with its letters") {
  const auto measure = [](double chord, double caption) {
    Fixed fixed;
    fixed.look.type[static_cast<std::size_t>(templates::Role::chord)].size = chord;
    fixed.look.type[static_cast<std::size_t>(templates::Role::caption)].size = caption;
    score::FormChart chart;
    chart.bars = {cell("Dm7", true, true), cell("Dm7")};
    chart.bars[0].repeat_begin = true;
    const Blocks blocks = blocks_of(chart, 488, fixed);
    double thick = 0;
    for (const auto& rule : all_of<sheet::Rule>(blocks[1].items)) thick = std::max(thick, rule.width);
    const sheet::Path key = shades(blocks.back()).at(0);
    double top = 1e9;
    double bottom = -1e9;
    for (const sheet::Segment& segment : key.segments) {
      if (segment.kind == sheet::Segment::Kind::close) continue;
      top = std::min(top, segment.end.y);
      bottom = std::max(bottom, segment.end.y);
    }
    return std::pair(thick, bottom - top);
  };
  const auto [thick, key] = measure(12, 8);
  CHECK(thick == Approx(2));
  CHECK(key == Approx(7.4));
  const auto [thicker, taller] = measure(24, 16);
  CHECK(thicker == Approx(4));
  CHECK(taller == Approx(2 * 7.4));
}
