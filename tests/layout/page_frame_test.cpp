#include <catch2/catch.hpp>
#include <string>

#include "layout/furniture.h"
#include "layout/ink.h"
#include "layout/page_fixture.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Frame;
using layout::Furniture;

namespace {

score::Score score_with(std::string teacher, std::string copyright, std::optional<std::string> link) {
  score::Score score;
  score.heading.title = plain_run("Low tide vamp");
  score.heading.series = "Tuesday bass class";
  score.heading.number = "No. 7";
  score.heading.link = std::move(link);
  score.teacher = std::move(teacher);
  score.copyright = std::move(copyright);
  return score;
}

struct Run {
  std::string text;
  double left;
  double right;
  double y;
};

std::vector<Run> footer(Fixed& fixed, const score::Score& score, int page = 0) {
  const Frame frame = layout::make_frame(score.paper, fixed.look);
  const Furniture furniture(score, frame, 88, fixed.setter);
  std::vector<Run> runs;
  const std::vector<sheet::Item> items = furniture.foot(page, 2);
  for (const auto& run : all_of<sheet::GlyphRun>({items.back()})) {
    runs.push_back({run.text, run.glyphs.front().x, run.glyphs.back().x + run.size / 2, run.glyphs.front().y});
  }
  return runs;
}

}  // namespace

TEST_CASE("A4 has the table's margins and a text of 488 points, and Letter keeps the text") {
  const templates::Template look;
  const Frame a4 = layout::make_frame(lesson::Paper::a4, look);
  CHECK(a4.width == 595.28);
  CHECK(a4.height == 841.89);
  CHECK(a4.left == 62);
  CHECK(a4.text_width == Approx(488));
  const Frame letter = layout::make_frame(lesson::Paper::letter, look);
  CHECK(letter.width == 612);  // 8½ by 11 inches of 72 points
  CHECK(letter.height == 792);
  CHECK(letter.text_width == Approx(488));
  CHECK(letter.left + letter.text_width + letter.right == Approx(612));
}

TEST_CASE("a lesson's paper goes before the template's") {
  templates::Template look;
  CHECK(layout::make_frame(std::nullopt, look).height == 841.89);
  look.paper = templates::Paper::letter;
  CHECK(layout::make_frame(std::nullopt, look).height == 792);
  CHECK(layout::make_frame(lesson::Paper::a4, look).height == 841.89);
  CHECK(layout::make_frame(lesson::Paper::letter, look).height == 792);
}

TEST_CASE("a two-sided template changes the margins over on second pages") {
  templates::Template look;
  look.two_sided = true;
  const Frame frame = layout::make_frame(lesson::Paper::a4, look);
  CHECK(frame.text_left(0) == 62);
  CHECK(frame.text_left(1) == Approx(45.28));
  CHECK(frame.text_left(2) == 62);
  look.two_sided = false;
  CHECK(layout::make_frame(lesson::Paper::a4, look).text_left(1) == 62);
}

TEST_CASE("addresses are printed as people read them") {
  CHECK(layout::bare_address("https://www.shed.example/7/") == "shed.example/7");
  CHECK(layout::bare_address("http://shed.example") == "shed.example");
  CHECK(layout::bare_address("shed.example/7") == "shed.example/7");
}

TEST_CASE("three texts at the foot: left, centred, flush right") {
  Fixed fixed;
  const auto runs = footer(fixed, score_with("", "© Shed", "https://shed.example/7"));
  REQUIRE(runs.size() == 3);
  CHECK(runs[0].text == "© Shed");
  CHECK(runs[0].left == 0);
  CHECK(runs[1].text == "page 1 of 2");
  CHECK(runs[1].right == Approx(488).margin(0.1));
  CHECK(runs[2].text == "shed.example/7");
  CHECK((runs[2].left + runs[2].right) / 2 == Approx(244).margin(0.1));
  for (const Run& run : runs) CHECK(run.y == Approx(841.89 - 40));
}

TEST_CASE("the teacher is printed once, with the copyright line or in it") {
  Fixed fixed;
  CHECK(footer(fixed, score_with("Shed", "© 2026 Shed", {}))[0].text == "© 2026 Shed");
  CHECK(footer(fixed, score_with("Shed", "Copy freely", {}))[0].text == "Shed \u00B7 Copy freely");
  CHECK(footer(fixed, score_with("Shed", "", {}))[0].text == "Shed");
  CHECK(footer(fixed, score_with("Shed", "Shed", {}))[0].text == "Shed");
  CHECK(footer(fixed, score_with("", "", {}))[0].text == "page 1 of 2");
}

TEST_CASE("the cautions stand at the foot of the first page, where a screen reader finds them") {
  Fixed fixed;
  const score::Score score = score_with("Shed", "", {});
  const Frame frame = layout::make_frame(score.paper, fixed.look);
  {
    const Furniture furniture(score, frame, 88, fixed.setter);
    const auto cautions = furniture.cautions();
    REQUIRE(cautions.size() == 1);
    CHECK(std::get<sheet::Group>(cautions[0]).tag == sheet::Tag::paragraph);
    const auto runs = all_of<sheet::GlyphRun>(cautions);
    REQUIRE(runs.size() == 1);
    CHECK(runs[0].text.find("see a health professional") != std::string::npos);
    CHECK(runs[0].glyphs[0].y == Approx(841.89 - 40 - 11));
  }
  {
    Furniture moved(score, frame, 88, fixed.setter);
    const double foot = moved.room().bottom;
    moved.move_cautions(1);
    CHECK(all_of<sheet::GlyphRun>(moved.cautions())[0].glyphs[0].y == Approx(841.89 - 40 - 11));
    CHECK(moved.room().first_bottom == foot);
    CHECK(moved.room().second_bottom == foot - 11);
    CHECK(moved.room().bottom == foot);
  }
  fixed.look.cautions = false;
  const Furniture furniture(score, frame, 88, fixed.setter);
  CHECK(furniture.cautions().empty());
  CHECK(furniture.room().bottom == furniture.room().first_bottom);
}

TEST_CASE("with one thing a line, each text at the foot has its own row") {
  Fixed fixed;
  fixed.look.one_thing_a_line = true;
  const auto runs = footer(fixed, score_with("Shed", "", "https://shed.example/7"));
  REQUIRE(runs.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(runs[i].left == 0);
    CHECK(runs[i].y == Approx(841.89 - 40 - (2 - static_cast<double>(i)) * 11));
  }
}

TEST_CASE("a link's text can be clicked wherever the footer has it") {
  Fixed fixed;
  fixed.look.footer = {"{link}", "", "{page}"};
  const score::Score score = score_with("", "", "https://shed.example/7");
  const Frame frame = layout::make_frame(score.paper, fixed.look);
  const auto links = all_of<sheet::Link>(Furniture(score, frame, 88, fixed.setter).foot(1, 2));
  REQUIRE(links.size() == 1);
  CHECK(links[0].area.left == 0);
}

TEST_CASE("footers of any length keep their texts apart and inside") {
  Fixed fixed;
  for (const int length : {1, 40, 80, 150, 400}) {
    for (const int link : {0, 10, 60, 110, 300}) {
      std::string copyright;
      while (static_cast<int>(copyright.size()) < length) copyright += "mud ";
      const score::Score score =
          score_with("", copyright, link > 0 ? std::optional(std::string(link, 'x')) : std::nullopt);
      const auto runs = footer(fixed, score);
      INFO(length << " " << link);
      for (const Run& a : runs) {
        CHECK(a.left >= -1e-6);
        CHECK(a.right <= 488 + 0.1);
        CHECK(a.y <= 841.89 - 40 + 1e-6);
        for (const Run& b : runs) {
          if (&a != &b && a.y == b.y) CHECK((a.right < b.left || b.right < a.left));
        }
      }
      const Frame frame = layout::make_frame(score.paper, fixed.look);
      const Furniture furniture(score, frame, 88, fixed.setter);
      double rule = frame.height;
      for (const auto& r : all_of<sheet::Rule>(furniture.foot(0, 2))) rule = std::min(rule, r.from.y);
      CHECK(furniture.room().first_bottom <= rule - 14 + 1e-6);
      CHECK(furniture.room().bottom == Approx(furniture.room().first_bottom + 11));  // a row of cautions
    }
  }
}

TEST_CASE("later pages say at their head which handout they belong to") {
  Fixed fixed;
  const score::Score score = score_with("", "", {});
  const Frame frame = layout::make_frame(score.paper, fixed.look);
  const Furniture furniture(score, frame, 88, fixed.setter);
  CHECK(furniture.head(0, 2).empty());
  const auto items = furniture.head(1, 2);
  REQUIRE(items.size() == 1);
  const auto head = all_of<sheet::GlyphRun>(items);
  REQUIRE(head.size() == 2);
  CHECK(head[0].text == "Tuesday bass class  \u00B7  No. 7");
  CHECK(head[1].text == "Low tide vamp");
  CHECK(head[1].glyphs[0].x == 0);
  CHECK(head[1].glyphs[0].y == 52);  // the text's top + 8
  for (const auto& group : items) CHECK(std::get<sheet::Group>(group).tag == sheet::Tag::artifact);
}
