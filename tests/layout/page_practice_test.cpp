// What a student ticks and fills in: build-ups and practice logs; and what stands at the top right of its head.
#include <catch2/catch.hpp>
#include <cmath>
#include <set>
#include <string>

#include "layout/build_up.h"
#include "layout/frame.h"
#include "layout/furniture.h"
#include "layout/head_corner.h"
#include "layout/ink.h"
#include "layout/music_fixture.h"
#include "layout/page_fixture.h"
#include "layout/practice_log.h"
#include "layout/qr_code.h"
#include "layout/title_block.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Blocks;

namespace {

// How often a part is drawn as a path.
std::size_t paths(const Blocks& blocks, sheet::Part part) {
  std::size_t count = 0;
  for (const layout::Block& block : blocks) {
    for (const auto& path : all_of<sheet::Path>(block.items)) count += path.part == part ? 1 : 0;
  }
  return count;
}

void check_inside(Fixed& fixed, const Blocks& blocks, double width) {
  for (const layout::Block& block : blocks) {
    const auto ink = layout::ink_of(block.items, fixed.type);
    REQUIRE(ink);
    CHECK(ink->left >= -1);
    CHECK(ink->right <= width + 1);
  }
}

}  // namespace

TEST_CASE("every step of a build-up has its box and its bars, in even rows") {
  Fixed fixed;
  const std::vector<score::Step> steps = {{1, 1, false}, {2, 2, false}, {1, 2, false}, {3, 3, false},
                                          {4, 4, false}, {3, 4, false}, {1, 4, true}};
  for (const double width : {232.0, 488.0}) {
    const Blocks blocks = layout::build_up_blocks(steps, width, fixed.setter);
    CHECK(paths(blocks, sheet::Part::ladder) == 7);
    check_inside(fixed, blocks, width);
    std::string all;
    for (std::size_t i = 1; i < blocks.size(); ++i) all += spelled(blocks[i].items);
    CHECK(all == "bar 1bar 2bars 1–2bar 3bar 4bars 3–4all of it");
  }
  CHECK(layout::build_up_blocks(steps, 488, fixed.setter).size() == 3);  // a heading, and two rows of four and three
}

TEST_CASE("a practice log has its rows to write in, all as wide as the text") {
  Fixed fixed;
  for (const double width : {232.0, 488.0}) {
    const Blocks blocks = layout::practice_log_blocks(6, width, fixed.setter);
    REQUIRE(blocks.size() == 8);
    CHECK(spelled(blocks[1].items) == "DateTempoClean passesNote");
    for (std::size_t i = 2; i < blocks.size(); ++i) {
      CHECK(blocks[i].height >= 20);
      CHECK(all_of<sheet::Rule>(blocks[i].items).back().to.x == width);
    }
  }
}

TEST_CASE("a practice log of a dozen rows is not parted, a longer one not after its first row nor before its last") {
  Fixed fixed;
  const Blocks whole = layout::practice_log_blocks(12, 488, fixed.setter);
  for (std::size_t i = 0; i + 1 < whole.size(); ++i) CHECK(whole[i].keep_with_next);
  CHECK_FALSE(whole.back().keep_with_next);
  const Blocks many = layout::practice_log_blocks(20, 488, fixed.setter);
  CHECK((many[2].keep_with_next && many[many.size() - 2].keep_with_next));
  CHECK_FALSE(many[3].keep_with_next);
  CHECK_FALSE(many.back().keep_with_next);
}

TEST_CASE("the head of a log has room for its names in any size") {
  for (const double size : {8.0, 18.0}) {
    Fixed fixed;
    fixed.look.type[static_cast<std::size_t>(templates::Role::caption)].size = size;
    const Blocks blocks = layout::practice_log_blocks(1, 488, fixed.setter);
    // Letters hang by a quarter of their size, and reach up by three quarters.
    CHECK(blocks[1].height >= 0.7 * size);
    CHECK(blocks[1].ascent >= 1.2 * size);
    CHECK(blocks[1].clearance > 0.4 * size);
    const auto names = all_of<sheet::GlyphRun>(blocks[1].items);
    for (const auto& rule : all_of<sheet::Rule>(blocks[1].items)) {
      if (rule.from.x != rule.to.x) continue;
      double nearest = 1e9;
      for (const auto& name : names) {
        if (name.glyphs.front().x > rule.from.x) nearest = std::min(nearest, name.glyphs.front().x - rule.from.x);
      }
      CHECK(nearest >= 0.5 * size);
    }
  }
}

TEST_CASE("no name in a log's head reaches the next column, in any language") {
  Fixed fixed;
  for (const words::Language language : words::languages) {
    fixed.setter.words = language;
    const Blocks blocks = layout::practice_log_blocks(1, 232, fixed.setter);
    const auto names = all_of<sheet::GlyphRun>(blocks[1].items);
    std::vector<double> lines;
    for (const auto& rule : all_of<sheet::Rule>(blocks[1].items)) {
      if (rule.from.x == rule.to.x) lines.push_back(rule.from.x);
    }
    REQUIRE(lines.size() == 3);
    REQUIRE(names.size() >= 4);
    for (std::size_t i = 0; i + 1 < names.size() && i < lines.size(); ++i) {
      CAPTURE(words::language_code(language), names[i].text);
      CHECK(names[i].glyphs.back().x + names[i].size / 2 <= lines[i]);
    }
  }
}

// ISO/IEC 18004: a symbol of version v has 17 + 4v modules a side, and four modules of white around it.
TEST_CASE("a QR code's modules are large enough for print, whatever the link's length") {
  const double tenths_of_a_millimetre = 72 / 254.0;
  for (const std::size_t length : {20U, 100U, 200U, 300U}) {
    const auto code = layout::qr_code("https://" + std::string(length - 8, 'x'), 66);
    REQUIRE(code);
    CHECK(code->module >= 4 * tenths_of_a_millimetre);
    CHECK(code->side >= 66 - 1e-9);
    CHECK(code->side <= 100);
    const double modules = code->side / code->module;
    CHECK(std::abs(modules - std::round(modules)) < 1e-6);
    CHECK(static_cast<int>(std::lround(modules)) % 4 == 1);
    CHECK(code->quiet_zone() == Approx(4 * code->module));
  }
}

TEST_CASE("nothing in the head comes nearer to a QR code than its quiet zone") {
  Fixed fixed;
  score::Heading heading;
  heading.series = heading.level = "Tuesday bass class for all who come and whoever they bring along with them";
  heading.title = heading.subtitle =
      plain_run("A title that runs on until it meets what stands in the corner of the page");
  for (int i = 0; i < 12; ++i) heading.facts.push_back({"Tuning", plain_run("E A D G B E")});
  heading.link = "https://eelgrass.example/7";
  heading.answer_key = "Answer key";
  const layout::Block block = layout::title_block(heading, 488, fixed.setter);
  const auto code = layout::qr_code(*heading.link, 66);
  REQUIRE(code);
  const double zone = code->quiet_zone();
  const sheet::Box free{488 - code->side - zone, 1 - zone, 488 + zone, 1 + code->side + zone};
  std::size_t codes = 0;
  sheet::walk(block.items, [&](const sheet::Item& item, sheet::GroupChain) {
    if (std::holds_alternative<sheet::Group>(item) || std::holds_alternative<sheet::Link>(item)) return;
    const auto* path = std::get_if<sheet::Path>(&item);
    if (path != nullptr && path->part == sheet::Part::qr_code) {
      ++codes;
      return;
    }
    const auto ink = layout::ink_of({&item, 1}, fixed.type);
    if (!ink) return;
    const bool apart =
        ink->right <= free.left || ink->left >= free.right || ink->bottom <= free.top || ink->top >= free.bottom;
    CHECK(apart);
  });
  CHECK(codes == 1);
}

TEST_CASE("the words under a QR code take two lines at most and none is broken, in any language and size") {
  for (const char* name : {"music-stand", "compact", "large-print"}) {
    test::Music music(name);
    layout::Type type(music.fonts, music.look, music.by_role);
    for (const words::Language language : words::languages) {
      layout::Setter setter{type, std::string(words::language_code(language)), language, 1};
      score::Heading heading;
      heading.title = plain_run("Drift");
      heading.link = "https://eelgrass.example/7";
      const layout::HeadCorner corner = layout::head_corner(heading, 488, setter);
      std::string rest(words::word(language, words::Word::link_hint));
      std::set<double> baselines;
      for (const auto& run : all_of<sheet::GlyphRun>(corner.items)) {
        baselines.insert(run.glyphs.front().y);
        INFO(name << ", " << words::language_code(language) << ": \"" << run.text << "\" of \"" << rest << "\"");
        REQUIRE(rest.starts_with(run.text));
        rest.erase(0, run.text.size());
        CHECK((rest.empty() || rest.front() == ' ' || run.text.ends_with(' ')));
        if (rest.starts_with(' ')) rest.erase(0, 1);
      }
      CHECK(rest.empty());
      CHECK(baselines.size() <= 2);
      CHECK(layout::ink_of(corner.items, type)->right <= 488.5);
    }
  }
}

TEST_CASE("an answer key says so in its head and on every page") {
  Fixed fixed;
  score::Score score;
  score.heading.title = plain_run("Low tide vamp");
  score.heading.series = "Tuesday bass class";
  score.heading.answer_key = "Answer key";
  CHECK(spelled(layout::title_block(score.heading, 488, fixed.setter).items).find("Answer key") != std::string::npos);
  const layout::Furniture furniture(score, layout::make_frame(score.paper, fixed.look), 88, fixed.setter);
  CHECK(spelled(furniture.head(1, 2)).find("Answer key") != std::string::npos);
}
