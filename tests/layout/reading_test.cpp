// What pages are to readers that do not see them: tags in reading order, words in place of pictures, and the spaces
// that the eye finds for itself.
#include <catch2/catch.hpp>

#include "layout/assembly.h"
#include "layout/build_up.h"
#include "layout/chord_boxes.h"
#include "layout/example_blocks.h"
#include "layout/form_chart.h"
#include "layout/heading.h"
#include "layout/ladder.h"
#include "layout/music_fixture.h"
#include "layout/neck.h"
#include "layout/page_fixture.h"
#include "layout/practice_log.h"
#include "layout/title_block.h"

using namespace fretsheaf;
using sheet::Tag;
using test::Fixed;
using test::paragraph;
using test::plain_run;

namespace {

const char* short_name(Tag tag) {
  switch (tag) {
    case Tag::heading1:
      return "h1";
    case Tag::heading2:
      return "h2";
    case Tag::heading3:
      return "h3";
    case Tag::paragraph:
      return "p";
    case Tag::list:
      return "list";
    case Tag::list_item:
      return "item";
    case Tag::list_label:
      return "mark";
    case Tag::list_body:
      return "body";
    case Tag::quote:
      return "quote";
    case Tag::table:
      return "table";
    case Tag::table_row:
      return "row";
    case Tag::table_header:
      return "head";
    case Tag::table_cell:
      return "cell";
    case Tag::figure:
      return "figure";
    case Tag::link:
      return "link";
    default:
      return "?";
  }
}

// Tags with what is in them, figures with their words: "p(low tide)".
std::string told(const std::vector<sheet::Item>& items) {
  std::string all;
  for (const sheet::Item& item : items) {
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) all += run->text;
    const auto* group = std::get_if<sheet::Group>(&item);
    if (group == nullptr) continue;
    const std::string inside = group->tag == Tag::figure ? group->alternative : told(group->items);
    if (!all.empty() && all.back() == ')') all += ' ';
    all += group->tag == Tag::none ? inside : std::string(short_name(group->tag)) + "(" + inside + ")";
  }
  return all;
}

std::string told(layout::Blocks blocks) {
  layout::Assembly page;
  double y = 0;
  for (layout::Block& block : blocks) page.place(std::move(block), 0, y += 20);
  return told(page.take());
}

score::Block block(score::Block::Kind kind, const std::string& text, std::vector<score::Container> inside, int opens,
                   std::optional<int> ordinal = {}) {
  score::Block made;
  made.kind = kind;
  if (!text.empty()) made.runs = plain_run(text);
  made.inside = std::move(inside);
  made.opens = opens;
  made.ordinal = ordinal;
  return made;
}

using Kind = score::Block::Kind;
constexpr auto list = score::Container::list;
constexpr auto quote = score::Container::quote;

score::Block heading(const std::string& text, int level) {
  score::Block made = block(Kind::heading, text, {}, 0);
  made.level = level;
  return made;
}

}  // namespace

TEST_CASE("a line ends in the space that parts it from the next, and a link in its own") {
  Fixed fixed;
  const score::Runs runs = {{"see ", false, false, false, {}},
                            {"the long page", false, false, false, "https://shed.example/"},
                            {" now", false, false, false, {}}};
  const double character = fixed.look.style(templates::Role::body).size / 2;
  const auto lines = layout::set_paragraph(runs, 9 * character, {}, fixed.type);
  std::vector<std::string> said;
  for (const layout::TextLine& line : lines) said.push_back(told(line.items));
  CHECK(said == std::vector<std::string>{"see link(the )", "link(long page )", "now"});
  CHECK(lines[0].width == Approx(7 * character));
  CHECK(test::all_of<sheet::Rule>(lines[0].items).at(0).to.x == Approx(7 * character));
}

TEST_CASE("a list is told with its items, a list in an item within it, a quote as one") {
  Fixed fixed;
  const score::Blocks text = {paragraph("Hum."),
                              block(Kind::list_item, "low", {list}, 1, 1),
                              block(Kind::list_item, "lower", {list, list}, 1),
                              block(Kind::list_item, "lowest", {list, list}, 0),
                              block(Kind::paragraph, "more of low", {list}, 0),
                              block(Kind::list_item, "high", {list}, 0, 2),
                              block(Kind::paragraph, "said", {quote}, 1),
                              block(Kind::paragraph, "and said", {quote}, 0)};
  CHECK(told(layout::set_prose(text, 400, fixed.setter)) ==
        "p(Hum.) list(item(mark(1) body(p(low) list(item(mark(\u2022) body(p(lower))) item(mark(\u2022) "
        "body(p(lowest)))) p(more of low))) item(mark(2) body(p(high)))) quote(p(said) p(and said))");
}

TEST_CASE("each of two marks on one line is told with its own item") {
  Fixed fixed;
  const score::Blocks text = {block(Kind::list_item, "", {list}, 1, 1), block(Kind::list_item, "low", {list, list}, 1)};
  CHECK(told(layout::set_prose(text, 400, fixed.setter)) ==
        "list(item(mark(1) body(list(item(mark(\u2022) body(p(low)))))))");
}

TEST_CASE("an item that goes on over the end of a page keeps its place and has no second mark") {
  Fixed fixed;
  const double character = fixed.look.style(templates::Role::body).size / 2;
  layout::Blocks blocks =
      layout::set_prose({block(Kind::list_item, "aaaa bbbb cccc", {list}, 1, 1)}, 14 + 4 * character, fixed.setter);
  REQUIRE(blocks.size() == 3);
  layout::Assembly first;
  layout::Assembly second;
  first.place(blocks[0], 0, 0);
  second.place(blocks[1], 0, 0);
  second.place(blocks[2], 0, 20);
  const std::vector<sheet::Item> before = first.take();
  const std::vector<sheet::Item> after = second.take();
  CHECK(told(before) == "list(item(mark(1) body(p(aaaa ))))");
  CHECK(told(after) == "list(item(body(p(bbbb cccc))))");
  std::vector<int> flows;
  for (const auto* page : {&before, &after}) {
    for (const sheet::Group& group : test::all_of<sheet::Group>(*page)) {
      if (group.tag != Tag::list_label) flows.push_back(group.flow);
    }
  }
  CHECK(flows.size() == 8);
  CHECK(std::equal(flows.begin(), flows.begin() + 4, flows.begin() + 4));
  CHECK(std::count(flows.begin(), flows.end(), 0) == 0);
}

TEST_CASE("no level of heading is left out on the way down") {
  Fixed fixed;
  CHECK(told(layout::set_prose({heading("Mud", 2), heading("Tide", 1), heading("Silt", 3)}, 400, fixed.setter)) ==
        "h2(Mud) h2(Tide) h3(Silt)");
  CHECK(told(layout::set_prose({heading("Mud", 1)}, 400, fixed.setter, 2)) == "h3(Mud)");
  CHECK(told(layout::set_numbered({{heading("Mud", 1)}}, 400, fixed.setter)) == "list(item(mark(1) body(h3(Mud))))");
}

TEST_CASE("a head of several lines is one paragraph a text, labels and values apart") {
  Fixed fixed;
  score::Heading head;
  head.title = plain_run("Low tide");
  head.subtitle = plain_run("a groove for the long walk back over the flats in the dark, with a lantern and with care");
  head.facts = {{"Key", plain_run("D Dorian"), score::Fact::Kind::key}};
  head.link = "https://www.shed.example/7/";
  CHECK(told(layout::title_block(head, 200, fixed.setter).items)
            .find("h1(Low tide) p(a groove for the long walk back over the flats in the dark, with a lantern and with "
                  "care) p(Key D Dorian) link(figure(shed.example/7)scan or click") == 0);
}

TEST_CASE("an example's heading tells its number, its title, its tempo and its feel") {
  Fixed fixed;
  score::Example example;
  example.number = 3;
  example.title = plain_run("The pulse");
  example.tempo = score::TempoMark{60, 108, false, {2, 1}, {3, 8}};
  example.show_feel = true;
  example.feel = theory::Feel::shuffle;
  CHECK(told(layout::example_heading(example, 488, fixed.setter).items) ==
        "h2(EXAMPLE 3 The pulse) figure(\u2669. = 60\u2013108, shuffle)");
  example.feel = theory::Feel::straight;
  example.tempo = score::TempoMark{80, 100, true, {3, 0}, {1, 8}};
  CHECK(
      told(layout::example_heading(example, 488, fixed.setter).items).find("figure(\u266A = 80 / 100, even eighths)") !=
      std::string::npos);
}

TEST_CASE("a ladder and a log are tables with headers, a build-up is a list") {
  Fixed fixed;
  layout::Blocks ladder = layout::ladder_blocks({{60, 72}, 2}, 488, fixed.setter);
  ladder.erase(ladder.begin());
  CHECK(told(ladder) == "table(row(head(60) cell(figure(2 clean passes))) row(head(72) cell(figure(2 clean passes))))");
  layout::Blocks log = layout::practice_log_blocks(1, 488, fixed.setter);
  log.erase(log.begin());
  CHECK(told(log) ==
        "table(row(head(Date) head(Tempo) head(Clean passes) head(Note)) row(cell() cell() cell() cell()))");
  layout::Blocks steps = layout::build_up_blocks({{1, 1, false}, {1, 2, true}}, 488, fixed.setter);
  steps.erase(steps.begin());
  CHECK(told(steps) == "list(item(body(bar 1)) item(body(all of it)))");
}

TEST_CASE("lines of music say the words of their bars, and the first what holds for all of them") {
  test::Music music;
  const score::Score score = music.score_of(test::bass_lesson("bars-per-line = 2",
                                                              "count | 1 2 3 4 | 1 2 3 4 | 1 2 3 4 | 1 2 3 4 |\n"
                                                              "A     | 5 7 5 8 | 5 7 5 8 | 5 7 5 8 | 5 7 5 8 |\n"));
  const score::Alternatives words{{{"In four.", {"Bar 1.", "Bar 2.", "Bar 3.", "Bar 4."}, "", {}, ""}}};
  const auto figures = [&](const score::Alternatives& alternatives) {
    std::vector<std::string> said;
    const sheet::Sheet sheet =
        layout::lay_out(score, alternatives, music.look, music.fonts, music.by_role, music.diagnostics);
    for (const sheet::Group& group : test::all_of<sheet::Group>(sheet.pages.at(0).items)) {
      if (group.tag == Tag::figure) said.push_back(group.alternative);
    }
    return said;
  };
  CHECK(figures(words) == std::vector<std::string>{"In four. Bar 1. Bar 2.", "Bar 3. Bar 4."});
  CHECK(figures({}) == std::vector<std::string>{"Example 1", "Example 1"});
}

TEST_CASE("a bar that two lines share is told once") {
  test::Music music;
  // Four bars of sixteenths under long syllables, each broken over two lines.
  std::string count = "count |";
  std::string lyric = "lyric |";
  std::string notes = "A     |";
  for (int beat = 1; beat <= 12; ++beat) {
    for (const char* sign : {"", "e", "+", "a"}) {
      const std::string shown = *sign == 0 ? std::to_string(beat) : sign;
      count += shown + std::string(12 - shown.size(), ' ');
      lyric += "wanderingly ";
      notes += "5" + std::string(11, ' ');
    }
  }
  const std::string grid = count + "|\n" + lyric + "|\n" + notes + "|\n";
  const score::Score score = music.score_of(
      "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\nmeter = "
      "\"12/4\"\n[[example]]\ntab = '''\n" +
      grid + "'''\n");
  layout::Type type(music.fonts, music.look, music.by_role);
  layout::Setter setter{type, "en", words::Language::en, 1};
  const layout::Blocks blocks = layout::example_blocks(score.examples.front(), {"In twelve.", {"Bar 1."}, "", {}, ""},
                                                       score, 488, setter, music.diagnostics);
  std::vector<std::string> said;
  for (const layout::Block& block : blocks) {
    for (const sheet::Group& group : test::all_of<sheet::Group>(block.items)) {
      if (group.tag == Tag::figure) said.push_back(group.alternative);
    }
  }
  REQUIRE(said.size() > 1);
  CHECK(said[0] == "In twelve. Bar 1.");
  // A line that has nothing else says it again rather than nothing.
  for (std::size_t i = 1; i < said.size(); ++i) CHECK(said[i] == "Bar 1.");
}

TEST_CASE("necks, boxes and forms say the words that are made for them") {
  test::Music music;
  const score::Score score = music.score_of(
      "title = \"Low tide\"\nkey = \"C major\"\ninstrument = \"guitar\"\n[[example]]\nneck = { of = \"key\" }\n"
      "shapes = [\"C\"]\nform = { bars = \"I V | IV I\", here = \"1\" }\ntab = '''\nchord | I       |\ncount | 1 2 3 4 "
      "|\n"
      "B     | 1 1 1 1 |\n'''\n");
  const score::Alternatives words{{{"", {"Bar."}, "The neck.", {"The box."}, "The form."}}};
  std::string said;
  for (const sheet::Page& page :
       layout::lay_out(score, words, music.look, music.fonts, music.by_role, music.diagnostics).pages) {
    said += told(page.items);
  }
  for (const char* figure : {"figure(Bar.)", "figure(The neck.)", "figure(The box.)", "figure(The form.)"}) {
    INFO(said);
    CHECK(said.find(figure) != std::string::npos);
  }
}
