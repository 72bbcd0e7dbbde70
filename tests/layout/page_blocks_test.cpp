#include <catch2/catch.hpp>
#include <string>

#include "layout/columns.h"
#include "layout/example_blocks.h"
#include "layout/heading.h"
#include "layout/ink.h"
#include "layout/ladder.h"
#include "layout/music_fixture.h"
#include "layout/page_fixture.h"
#include "layout/pattern.h"
#include "layout/tempo_sign.h"
#include "layout/title_block.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Block;
using layout::Blocks;
using sheet::Part;
using templates::Role;

namespace {

score::Heading full_heading() {
  score::Heading heading;
  heading.series = "Tuesday bass class";
  heading.number = "No. 7";
  heading.level = "early intermediate";
  heading.title = plain_run("Low tide vamp");
  heading.subtitle = plain_run("A groove");
  heading.facts = {{"Key", plain_run("D Dorian")}, {"Meter", plain_run("4/4")}};
  return heading;
}

// The baseline of the run that begins with these words.
double baseline(const Block& block, const std::string& words) {
  for (const auto& run : all_of<sheet::GlyphRun>(block.items)) {
    if (run.text.rfind(words, 0) == 0) return run.glyphs.front().y;
  }
  FAIL("no run begins with " << words);
  return 0;
}

double rule_y(const Block& block) {
  return all_of<sheet::Rule>(block.items).back().from.y;
}

score::Example example(std::string title) {
  score::Example example;
  example.number = 3;
  example.title = plain_run(std::move(title));
  return example;
}

sheet::Box ink(Fixed& fixed, const Block& block) {
  const auto box = layout::ink_of(block.items, fixed.type);
  REQUIRE(box);
  return *box;
}

// The boxes to tick: closed outlines of four lines.
std::vector<sheet::Path> boxes(const Block& block) {
  return all_of<sheet::Path>(block.items);
}

}  // namespace

TEST_CASE("the title block's baselines are those of the table of measures") {
  Fixed fixed;
  const Block block = layout::title_block(full_heading(), 488, fixed.setter);
  // The house's measures, from the top margin.
  CHECK(baseline(block, "Tuesday") == 8);
  CHECK(baseline(block, "Low tide") == 41);
  CHECK(baseline(block, "A groove") == 61);
  CHECK(baseline(block, "Key") == 83);
  CHECK(baseline(block, "D Dorian") == 95.5);
  CHECK(rule_y(block) == 109);
  CHECK(block.height == 109);
}

TEST_CASE("a title that is too long for the room beside a full corner goes under it") {
  Fixed fixed;
  score::Heading heading = full_heading();
  heading.link = "https://example.org/tide";
  heading.answer_key = "Answer key";
  std::string title = "Low tide";
  const double beside = baseline(layout::title_block(heading, 488, fixed.setter), title);
  CHECK(beside == 41);
  for (int i = 0; i < 30; ++i) title += " and low";
  heading.title = plain_run(title);
  const Block block = layout::title_block(heading, 488, fixed.setter);
  // Under the code, which is 66 points high, and the words below it.
  CHECK(baseline(block, "Low tide and") > 66 + 13);
  // 27 points at 0.8, of which the fake takes half for a letter: 45 letters go into 488 points, and the title has 248.
  int lines = 0;
  for (const auto& run : all_of<sheet::GlyphRun>(block.items)) lines += run.size == Approx(27 * 0.8) ? 1 : 0;
  CHECK(lines == 6);
}

TEST_CASE("what a lesson leaves out of its title block leaves no hole") {
  Fixed fixed;
  score::Heading bare;
  bare.title = plain_run("Low tide vamp");
  const Block alone = layout::title_block(bare, 488, fixed.setter);
  CHECK(baseline(alone, "Low tide") == Approx(0.7 * 27));  // its capitals begin at the text's top
  CHECK(rule_y(alone) == Approx(0.7 * 27 + 13.5));

  score::Heading no_subtitle = full_heading();
  no_subtitle.subtitle.clear();
  CHECK(baseline(layout::title_block(no_subtitle, 488, fixed.setter), "Key") == 63);
  score::Heading no_meta = full_heading();
  no_meta.series = no_meta.number = no_meta.level = "";
  CHECK(baseline(layout::title_block(no_meta, 488, fixed.setter), "A groove") == Approx(0.7 * 27 + 20));
}

TEST_CASE("a pattern joins what there is") {
  score::Heading heading = full_heading();
  const auto filled = [&](std::string_view pattern) { return layout::filled_pattern(pattern, heading); };
  CHECK(filled("{series}  \u00B7  {number}  \u00B7  {level}") ==
        "Tuesday bass class  \u00B7  No. 7  \u00B7  early intermediate");
  CHECK(filled("{title} \u00B7 {series}") == "Low tide vamp \u00B7 Tuesday bass class");
  CHECK(filled("Term 2 \u00B7 {number}") == "Term 2 \u00B7 No. 7");
  heading.series = "";
  CHECK(filled("{series}  \u00B7  {number}  \u00B7  {level}") == "No. 7  \u00B7  early intermediate");
  heading.number = heading.level = "";
  CHECK(filled("{series} \u00B7 {number} \u00B7 {level}").empty());
}

TEST_CASE("a part of a pattern is left out where another says it in whole words, not in letters of others") {
  score::Heading heading = full_heading();
  const auto filled = [&](std::string_view pattern) { return layout::filled_pattern(pattern, heading); };
  const std::string all = "{series} \u00B7 {number} \u00B7 {level}";
  heading.series = "Bass class";
  heading.number = "No. 12";
  heading.level = "B";
  CHECK(filled(all) == "Bass class \u00B7 No. 12 \u00B7 B");
  heading.level = "1";
  CHECK(filled(all) == "Bass class \u00B7 No. 12 \u00B7 1");
  heading.level = "class";
  CHECK(filled(all) == "Bass class \u00B7 No. 12");
  heading.series = "\u00A9Eelgrass Strings, \u00C9lise";
  heading.level = "Eelgrass Strings";
  CHECK(filled(all) == "\u00A9Eelgrass Strings, \u00C9lise \u00B7 No. 12");
  heading.level = "lise";
  CHECK(filled(all) == "\u00A9Eelgrass Strings, \u00C9lise \u00B7 No. 12 \u00B7 lise");
}

TEST_CASE("the head of a page holds what the template names, in its order") {
  Fixed fixed;
  fixed.look.head = {templates::HeadPart::title, templates::HeadPart::facts, templates::HeadPart::top_line};
  fixed.look.facts = {templates::FactName::meter, templates::FactName::key};
  score::Heading heading = full_heading();
  heading.facts[1].kind = score::Fact::Kind::meter;
  heading.facts.push_back({"Tuning", plain_run("E A D G"), score::Fact::Kind::tuning});
  const Block block = layout::title_block(heading, 488, fixed.setter);
  const double title = 0.7 * 27;
  CHECK(baseline(block, "Low tide") == Approx(title));
  CHECK(baseline(block, "Key") == Approx(title + 22));
  CHECK(baseline(block, "Tuesday") == Approx(title + 22 + 12.5 + 18));
  std::string order;
  for (const auto& run : all_of<sheet::GlyphRun>(block.items)) order += run.text + "/";
  CHECK(order ==
        "Low tide vamp/Meter /4/4/Key /D Dorian/Tuesday bass class  \u00B7  No. 7  \u00B7  early intermediate/");
}

TEST_CASE("labels beside their values share their baseline, and their values a left edge where each has a row") {
  Fixed fixed;
  fixed.look.labels_beside = true;
  const Block row = layout::title_block(full_heading(), 488, fixed.setter);
  CHECK(baseline(row, "Key") == baseline(row, "D Dorian"));
  CHECK(baseline(row, "Key") == baseline(row, "4/4"));
  fixed.look.one_thing_a_line = true;
  const Block rows = layout::title_block(full_heading(), 488, fixed.setter);
  CHECK(baseline(rows, "4/4") == baseline(rows, "D Dorian") + 12.5);
  double left = 0;
  for (const auto& run : all_of<sheet::GlyphRun>(rows.items)) {
    if (run.text == "D Dorian") left = run.glyphs[0].x;
    if (run.text == "4/4") CHECK(run.glyphs[0].x == left);
  }
  CHECK(left > 0);
}

TEST_CASE("a shuffle is named beside the sign of its swing") {
  Fixed fixed;
  score::Example one = example("The pulse");
  one.show_feel = true;
  one.feel = theory::Feel::swing;
  const std::string swing = spelled(layout::example_heading(one, 488, fixed.setter).items);
  CHECK(swing.find("shuffle") == std::string::npos);
  one.feel = theory::Feel::shuffle;
  const Block block = layout::example_heading(one, 488, fixed.setter);
  CHECK(baseline(block, "shuffle") == 0);
  CHECK(ink(fixed, block).right <= 488 + 1e-6);
}

TEST_CASE("with one thing a line, the parts of a heading stand under each other") {
  Fixed fixed;
  fixed.look.one_thing_a_line = true;
  score::Example one = example("The pulse");
  one.show_feel = true;
  const Block block = layout::example_heading(one, 488, fixed.setter);
  CHECK(baseline(block, "EXAMPLE 3") == 0);
  CHECK(baseline(block, "The pulse") == Approx(1.3 * 14));
  CHECK(baseline(block, "even eighths") > baseline(block, "The pulse") + 14);
  for (const auto& run : all_of<sheet::GlyphRun>(block.items)) CHECK(run.glyphs[0].x == 0);
}

TEST_CASE("the bracket of a swing sign keeps clear of the title over it") {
  test::Music music("large-print");
  layout::Type type(music.fonts, music.look, music.by_role);
  layout::Setter setter{type, "en", words::Language::en, 1};
  score::Example one = example("The long way");
  one.show_feel = true;
  one.feel = theory::Feel::swing;
  const Block block = layout::example_heading(one, 488, setter);
  double title = 0;
  double signs = 1e9;
  sheet::walk(block.items, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    const auto* rule = std::get_if<sheet::Rule>(&item);
    const std::vector<sheet::Item> alone = {item};
    const auto drawn = layout::ink_of(alone, type);
    if (run != nullptr && run->part == Part::heading) title = std::max(title, drawn->bottom);
    if ((run != nullptr && run->part == Part::tempo_mark) || rule != nullptr) signs = std::min(signs, drawn->top);
  });
  CHECK(signs - title >= 4);
}

TEST_CASE("the gaps of a tempo and a swing sign grow with their numbers") {
  const auto gap_of = [](const std::string& name) {
    test::Music music(name);
    layout::Type type(music.fonts, music.look, music.by_role);
    const layout::Words sign = layout::tempo_sign({92, 92, false, {2, 0}, {1, 4}}, type);
    double stem = 0;
    double equals = 0;
    sheet::walk(sign.items, [&](const sheet::Item& item, sheet::GroupChain) {
      if (const auto* rule = std::get_if<sheet::Rule>(&item)) stem = rule->from.x;
      const auto* run = std::get_if<sheet::GlyphRun>(&item);
      if (run != nullptr && run->text == "=") equals = run->glyphs.front().x;
    });
    return (equals - stem) / music.look.style(Role::tempo_number).size;
  };
  CHECK(gap_of("large-print") == Approx(gap_of("music-stand")));
  CHECK(gap_of("music-stand") == Approx(0.4).margin(0.03));
}

TEST_CASE("a long title steps down, then wraps, and nothing leaves the text") {
  Fixed fixed;
  for (const int length : {30, 36, 40, 60, 200}) {
    score::Heading heading = full_heading();
    std::string title;
    while (static_cast<int>(title.size()) < length) title += "tide ";
    heading.title = plain_run(title);
    heading.subtitle = plain_run(title);
    heading.level = title;
    for (int i = 0; i < 12; ++i) heading.facts.push_back({"Tuning", plain_run("E A D G B E")});
    const Block block = layout::title_block(heading, 488, fixed.setter);
    const sheet::Box box = ink(fixed, block);
    INFO(length);
    CHECK(box.left >= -1e-6);
    CHECK(box.right <= 488 + 1e-6);
    CHECK(box.top >= -1e-6);
    for (const auto& run : all_of<sheet::GlyphRun>(block.items)) CHECK(run.size >= 8);
  }
}

TEST_CASE("name and date are lines to write on") {
  Fixed fixed;
  score::Heading heading = full_heading();
  heading.name_line = true;
  const Block block = layout::title_block(heading, 488, fixed.setter);
  CHECK(baseline(block, "Name") == 95.5 + 27);
  CHECK(baseline(block, "Date") == 95.5 + 27);
  const auto rules = all_of<sheet::Rule>(block.items);
  REQUIRE(rules.size() == 3);
  CHECK(rules[0].to.x - rules[0].from.x > 200);
  CHECK(rules[1].to.x == 488);
  CHECK(rules[0].to.x < rules[1].from.x);
}

TEST_CASE("an example's heading: number in the accent, title, tempo flush right") {
  Fixed fixed;
  score::Example e = example("The pulse");
  e.tempo = score::TempoMark{92, 92, false, {2, 0}, {1, 4}};
  const Block block = layout::example_heading(e, 488, fixed.setter);
  CHECK(block.keep_with_next);
  const auto runs = all_of<sheet::GlyphRun>(block.items);
  CHECK(runs[0].text == "EXAMPLE 3 ");
  CHECK(runs[0].color == sheet::Color{0x09, 0x54, 0x61});
  CHECK(runs[0].size == 9);
  CHECK(runs[1].text == "The pulse");
  CHECK(runs.back().text == "92");
  CHECK(runs.back().glyphs.back().x + 5 == Approx(488));
  CHECK(all_of<sheet::Group>(block.items)[0].tag == sheet::Tag::heading2);
}

TEST_CASE("a ladder's tempo is a range, a pair two numbers") {
  Fixed fixed;
  const auto number = [&](int first, int last, bool pair) {
    score::Example e = example("x");
    e.tempo = score::TempoMark{first, last, pair, {2, 0}, {1, 4}};
    return all_of<sheet::GlyphRun>(layout::example_heading(e, 488, fixed.setter).items).back().text;
  };
  CHECK(number(60, 108, false) == "60\u2013108");
  CHECK(number(80, 100, true).find("80") == 0);
  CHECK(number(80, 100, true).find("100") != std::string::npos);
}

TEST_CASE("feel is a sign, or words where an example of a swung lesson is straight") {
  Fixed fixed;
  score::Example e = example("x");
  e.feel = theory::Feel::swing;
  CHECK(spelled(layout::example_heading(e, 488, fixed.setter).items).find('=') == std::string::npos);
  e.show_feel = true;
  const std::string swung = spelled(layout::example_heading(e, 488, fixed.setter).items);
  CHECK(swung.find('=') != std::string::npos);
  CHECK(swung.find('3') != std::string::npos);
  e.feel = theory::Feel::straight;
  const auto straight = all_of<sheet::GlyphRun>(layout::example_heading(e, 488, fixed.setter).items).back();
  CHECK(straight.text == words::word(words::Language::en, words::Word::straight_eighths));
  CHECK(straight.font == static_cast<int>(Role::expression));
  score::Event event;
  event.value = {4, 0};
  e.bars.emplace_back().events.push_back(event);
  CHECK(all_of<sheet::GlyphRun>(layout::example_heading(e, 488, fixed.setter).items).back().text ==
        words::word(words::Language::en, words::Word::straight_sixteenths));
}

TEST_CASE("a long heading wraps beside its tempo and never meets it") {
  Fixed fixed;
  score::Example e = example("The pulse of the tide that comes in and goes out twice a day and never asks why");
  e.tempo = score::TempoMark{60, 108, false, {3, 1}, {3, 16}};
  e.feel = theory::Feel::swing;
  e.show_feel = true;
  const Block block = layout::example_heading(e, 488, fixed.setter);
  CHECK(block.height > 0);
  double title_end = 0;
  double signs_begin = 488;
  for (const auto& run : all_of<sheet::GlyphRun>(block.items)) {
    if (run.part == Part::heading) title_end = std::max(title_end, run.glyphs.back().x + run.size / 2);
    if (run.part == Part::tempo_mark) signs_begin = std::min(signs_begin, run.glyphs.front().x);
  }
  CHECK(title_end <= signs_begin - 10);
}

TEST_CASE("a ladder of five rungs is the table's: full width, four boxes each") {
  Fixed fixed;
  const Blocks blocks = layout::ladder_blocks({{60, 72, 84, 96, 108}, 4}, 488, fixed.setter);
  REQUIRE(blocks.size() == 2);
  CHECK(blocks[0].keep_with_next);
  CHECK(blocks[1].gap == 11);
  CHECK(blocks[1].height == 28);
  CHECK(boxes(blocks[1]).size() == 20);
  const auto rules = all_of<sheet::Rule>(blocks[1].items);
  REQUIRE(rules.size() == 6);  // two rails, four rungs
  CHECK(rules[0].to.x == Approx(488));
  CHECK(rules[2].from.x == Approx(97.6));
  CHECK(spelled(blocks[1].items) == "60728496108");
  // Number's right edge and first box, from its rung.
  const auto number = all_of<sheet::GlyphRun>(blocks[1].items)[1];
  CHECK(number.glyphs.back().x + 6 == Approx(97.6 + 30));
  CHECK(boxes(blocks[1])[4].segments[0].end.x == Approx(97.6 + 38.5));
}

TEST_CASE("any number of rungs and passes keeps inside the text and loses none") {
  Fixed fixed;
  for (const double width : {488.0, 232.0}) {
    for (int count = 1; count <= 60; ++count) {
      for (const int passes : {1, 4, 7, 12, 40, 99}) {
        score::Ladder ladder{{}, passes};
        for (int i = 0; i < count; ++i) ladder.rungs.push_back(100 + i);
        const Blocks blocks = layout::ladder_blocks(ladder, width, fixed.setter);
        std::size_t ticks = 0;
        std::string numbers;
        for (const Block& block : blocks) {
          ticks += boxes(block).size();
          if (!boxes(block).empty()) numbers += spelled(block.items);
          const sheet::Box box = ink(fixed, block);
          REQUIRE(box.left >= -1);
          REQUIRE(box.right <= width + 1);
          REQUIRE(box.bottom <= block.height + block.descent + 1);
        }
        REQUIRE(ticks == static_cast<std::size_t>(count * passes));
        REQUIRE(numbers.size() == static_cast<std::size_t>(3 * count));
      }
    }
  }
}

TEST_CASE("practice notes are numbered under their heading") {
  Fixed fixed;
  const Blocks blocks =
      layout::practice_blocks({{paragraph("Clap.")}, {paragraph("Sing.")}}, "Example 2", 488, fixed.setter);
  CHECK(spelled_lines(blocks) == std::vector<std::string>{"Practice notesExample 2", "1Clap.", "2Sing."});
  CHECK(blocks[0].keep_with_next);
  CHECK(blocks[1].gap == 20);
  CHECK(blocks[2].gap == Approx(13.5 + 3.5));
}

TEST_CASE("a hint that does not fit beside its heading goes under it") {
  Fixed fixed;
  const Block wide = layout::section_heading("Tempo ladder", "tick one box", 488, fixed.setter);
  CHECK(wide.height == 0);
  const Block narrow = layout::section_heading("Tempo ladder", "tick one box for each clean pass", 150, fixed.setter);
  CHECK(narrow.height >= 13.5);
  CHECK(ink(fixed, narrow).right <= 150);
}

TEST_CASE("two short blocks that are even enough stand side by side") {
  Fixed fixed;
  const auto notes = [&](int count, double width) {
    return layout::practice_blocks(std::vector<score::Blocks>(static_cast<std::size_t>(count), {paragraph("Clap.")}),
                                   "", width, fixed.setter);
  };
  const auto made = [&](int left, int right) {
    const auto& m = fixed.look.measures;
    return layout::stack_shorts({{notes(left, 488), notes(left, 232)}, {notes(right, 488), notes(right, 232)}}, 488, m);
  };
  const Blocks pair = made(4, 3);
  REQUIRE(pair.size() == 1);
  CHECK(pair[0].gap == 36);
  double right_begin = 488;
  for (const auto& run : all_of<sheet::GlyphRun>(pair[0].items)) {
    if (run.glyphs.front().x > 200) right_begin = std::min(right_begin, run.glyphs.front().x);
  }
  CHECK(right_begin == 256);  // 232 and a gutter of 24
  CHECK(spelled(pair[0].items) == "Practice notes1Clap.2Clap.3Clap.4Clap.Practice notes1Clap.2Clap.3Clap.");
  CHECK(made(1, 9).size() == 12);    // too uneven: one after the other
  CHECK(made(30, 30).size() == 62);  // too long
}
