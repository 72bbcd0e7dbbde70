#include <catch2/catch.hpp>
#include <string>
#include <variant>

#include "layout/ink.h"
#include "layout/layout.h"
#include "layout/page_fixture.h"
#include "platform/disk_system.h"
#include "source/text.h"
#include "support/dice.h"
#include "typeface/fonts.h"

using namespace fretsheaf;
using namespace fretsheaf::test;

namespace {

std::string many_words(Dice& dice, int count) {
  const std::vector<std::string> words = {"tide", "mud",   "eelgrass", "low", "the",     "a",      "shed",
                                          "B♭",   "rests", "jetty",    "F♯,", "strings", "slowly", "1&2&"};
  std::string text;
  for (int i = 0; i < count; ++i) text += (text.empty() ? "" : " ") + dice.pick(words);
  return text;
}

score::Example random_example(Dice& dice, int number) {
  score::Example example;
  example.number = number;
  if (dice.chance(80)) example.title = plain_run(many_words(dice, dice.between(1, 14)));
  for (int i = dice.below(3); i > 0; --i) example.intro.push_back(paragraph(many_words(dice, dice.between(1, 90))));
  if (dice.chance(60)) {
    example.tempo = score::TempoMark{60, 108, false, {dice.between(0, 4), dice.below(2)}, {1, 4}};
    score::Ladder ladder{{}, dice.between(1, 9)};
    for (int i = dice.between(1, 60); i > 0; --i) ladder.rungs.push_back(160 - i);
    example.ladder = ladder;
  }
  if (dice.chance(50)) {
    example.show_feel = true;
    example.feel = dice.pick(std::vector<theory::Feel>{theory::Feel::straight, theory::Feel::swing,
                                                       theory::Feel::shuffle, theory::Feel::swing_16});
  }
  for (int i = dice.below(4); i > 0; --i)
    example.practice.push_back({test::paragraph(many_words(dice, dice.between(1, 40)))});
  return example;
}

// Examples without bars: what is tested here is all that stands around the music.
score::Score random_score(Dice& dice) {
  score::Score score;
  score.paper = dice.chance(50) ? lesson::Paper::a4 : lesson::Paper::letter;
  score.title = many_words(dice, dice.between(1, 20));
  score.heading.title = plain_run(score.title);
  if (dice.chance(50)) score.heading.subtitle = plain_run(many_words(dice, dice.between(1, 25)));
  if (dice.chance(50)) score.heading.series = many_words(dice, dice.between(1, 6));
  score.heading.name_line = dice.chance(50);
  for (int i = dice.below(6); i > 0; --i) score.heading.facts.push_back({"Tuning", plain_run("E A D G")});
  if (dice.chance(50)) score.heading.link = "https://shed.example/" + std::string(dice.between(1, 90), 'x');
  if (dice.chance(50)) score.copyright = many_words(dice, dice.between(1, 40));
  for (int i = dice.below(6); i > 0; --i) score.intro.push_back(paragraph(many_words(dice, dice.between(1, 200))));
  for (int i = dice.between(1, 5), n = 1; i > 0; --i, ++n) score.examples.push_back(random_example(dice, n));
  for (int i = dice.below(7); i > 0; --i)
    score.practice.push_back({test::paragraph(many_words(dice, dice.between(1, 40)))});
  return score;
}

sheet::Sheet laid_out(Fixed& fixed, const score::Score& score, source::Diagnostics& diagnostics,
                      std::string_view text = {}) {
  return layout::lay_out(score, {}, fixed.look, fixed.metrics, fixed.fonts, diagnostics, text);
}

}  // namespace

TEST_CASE("whatever a lesson holds, all ink stays within the margins of its page") {
  Dice dice(11);
  for (int round = 0; round < 60; ++round) {
    Fixed fixed;
    fixed.look.two_sided = dice.chance(30);
    source::Diagnostics diagnostics;
    const score::Score score = random_score(dice);
    const sheet::Sheet sheet = laid_out(fixed, score, diagnostics);
    CHECK_FALSE(diagnostics.has_errors());
    REQUIRE_FALSE(sheet.pages.empty());
    for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
      const sheet::Page& page = sheet.pages[i];
      const auto ink = layout::ink_of(page.items, fixed.type);
      REQUIRE(ink);
      INFO("round " << round << " page " << i + 1);
      const bool left_hand = fixed.look.two_sided && i % 2 == 1;
      const double wider = score.paper == lesson::Paper::letter ? (612 - 595.28) / 2 : 0;
      const double left = (left_hand ? 45.28 : 62) + wider;
      CHECK(ink->left >= left - 1);
      CHECK(ink->right <= left + 488 + 1);
      CHECK(ink->top >= 44 - 3);  // an accidental in the running head reaches a little above its capitals
      CHECK(ink->bottom <= page.height - 40 + 4);
    }
  }
}

TEST_CASE("every word of a lesson is on its pages, in reading order, once, with the spaces that lines end in") {
  Dice dice(5);
  for (int round = 0; round < 30; ++round) {
    Fixed fixed;
    source::Diagnostics diagnostics;
    score::Score score = random_score(dice);
    for (score::Example& example : score.examples) example.ladder.reset();
    const sheet::Sheet sheet = laid_out(fixed, score, diagnostics);
    std::string shown;
    for (const sheet::Page& page : sheet.pages) {
      for (const sheet::Item& item : page.items) {
        const auto* group = std::get_if<sheet::Group>(&item);
        if (group != nullptr && group->tag == sheet::Tag::artifact) continue;
        shown += spelled({item});
      }
    }
    std::size_t at = 0;
    const auto expect = [&](const score::Runs& runs) {
      const std::string text = score::plain(runs);
      const std::size_t found = shown.find(text, at);
      INFO("round " << round << ": " << text);
      REQUIRE(found != std::string::npos);
      at = found + text.size();
    };
    expect(score.heading.title);
    for (const score::Block& block : score.intro) expect(block.runs);
    for (const score::Example& example : score.examples) {
      expect(example.title);
      for (const score::Block& block : example.intro) expect(block.runs);
      for (const score::Blocks& note : example.practice) expect(note.front().runs);
    }
    for (const score::Blocks& note : score.practice) expect(note.front().runs);
  }
}

TEST_CASE("a sheet says its title, author, language and where the examples are") {
  Fixed fixed;
  source::Diagnostics diagnostics;
  score::Score score;
  score.title = "Low tide vamp";
  score.heading.title = plain_run("Low tide vamp");
  score.teacher = "Eelgrass Strings";
  score.language = words::Language::de;
  score.examples.resize(2);
  score.examples[0].number = 1;
  score.examples[0].title = plain_run("The pulse");
  score.examples[1].number = 2;
  const sheet::Sheet sheet = laid_out(fixed, score, diagnostics);
  CHECK(sheet.title == "Low tide vamp");
  CHECK(sheet.author == "Eelgrass Strings");
  CHECK(sheet.language == "de");
  REQUIRE(sheet.bookmarks.size() == 2);
  CHECK(sheet.bookmarks[0].title == words::fill_number(words::Language::de, words::Word::example, 1) + ": The pulse");
  CHECK(sheet.bookmarks[1].title == words::fill_number(words::Language::de, words::Word::example, 2));
  CHECK(sheet.bookmarks[0].y < sheet.bookmarks[1].y);
}

TEST_CASE("a character that no font has is an error at its place, said once, comments passed over") {
  Fixed fixed;
  fixed.metrics.missing = {U'\u2603'};
  source::Diagnostics diagnostics;
  score::Score score;
  score.heading.title = plain_run("Snow \u2603 and \u2603");
  score.intro = {paragraph("\u2603")};
  const std::string text = "# \u2603\ntitle = \"Snow \u2603 and \u2603\"\n";
  laid_out(fixed, score, diagnostics, text);
  source::Files files;
  files.add({"snow.lesson.toml", text});
  REQUIRE(diagnostics.list().size() == 1);
  CHECK(source::render(diagnostics.list()[0], files) ==
        "snow.lesson.toml:2:15: error: no font of the template has the character '\u2603' (U+2603)\n"
        "  title = \"Snow \u2603 and \u2603\"\n"
        "                \u005E\n"
        "help: write it another way, or name a font that has it in a template of your own\n");
}

TEST_CASE("with the real fonts prose fills its measure and stays in it") {
  const platform::DiskSystem system;
  typeface::FontSet set(system);
  const templates::Template look;
  std::vector<std::vector<typeface::FontId>> fonts(templates::role_count);
  for (std::size_t role = 0; role < templates::role_count; ++role) {
    for (const std::string& name : look.type[role].fonts) {
      const auto opened = set.open(name);
      REQUIRE(std::holds_alternative<typeface::FontId>(opened));
      fonts[role].push_back(std::get<typeface::FontId>(opened));
    }
  }
  layout::Type type(set, look, fonts);
  layout::Setter setter{type, "en", words::Language::en, 1};
  Dice dice(2);
  const layout::Blocks blocks = layout::set_prose({paragraph(many_words(dice, 300))}, 430, setter);
  CHECK(type.missing().empty());
  REQUIRE(blocks.size() > 10);
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    const auto ink = layout::ink_of(blocks[i].items, type);
    REQUIRE(ink);
    CHECK(ink->left >= -1);
    CHECK(ink->right <= 431);
    if (i + 1 < blocks.size()) CHECK(ink->right >= 0.85 * 430);
  }
}
