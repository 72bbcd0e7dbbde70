#include <catch2/catch.hpp>
#include <string>

#include "layout/page_fixture.h"
#include "layout/paragraph.h"
#include "layout/prose.h"

using namespace fretsheaf;
using namespace fretsheaf::test;
using layout::Blocks;
using layout::TextLine;
using templates::Role;

namespace {

std::vector<std::string> lines_of(Fixed& fixed, const std::string& text, double width) {
  std::vector<std::string> lines;
  for (const TextLine& line : layout::set_paragraph(plain_run(text), width, {}, fixed.type)) {
    lines.push_back(spelled(line.items));
  }
  return lines;
}

// The width of so many body characters, FixedMetrics' half an em each.
double body(Fixed& fixed, int characters) {
  return characters * fixed.look.style(Role::body).size / 2;
}

}  // namespace

TEST_CASE("words come out whole and in order, none wider than the measure") {
  Fixed fixed;
  CHECK(lines_of(fixed, "aaa bb cc ddddd", body(fixed, 6)) == std::vector<std::string>{"aaa ", "bb cc ", "ddddd"});
  CHECK(lines_of(fixed, "one", body(fixed, 50)) == std::vector<std::string>{"one"});
  CHECK(lines_of(fixed, "", 100).empty());
  CHECK(lines_of(fixed, "  \n", 100).empty());
}

TEST_CASE("a hard break ends a line, a soft hyphen is none") {
  Fixed fixed;
  CHECK(lines_of(fixed, "low\ntide", 400) == std::vector<std::string>{"low ", "tide"});
  CHECK(lines_of(fixed, "eel\u00ADgrass", 400) == std::vector<std::string>{"eelgrass"});
}

TEST_CASE("a word wider than the measure is broken where it must be") {
  Fixed fixed;
  CHECK(lines_of(fixed, "abcdefgh", body(fixed, 3)) == std::vector<std::string>{"abc", "def", "gh"});
  // Letters of several bytes stay whole, and something stands in each line, however narrow.
  CHECK(lines_of(fixed, "äöüßé", body(fixed, 2)) == std::vector<std::string>{"äö", "üß", "é"});
  CHECK(lines_of(fixed, "abc", body(fixed, 0.5)) == std::vector<std::string>{"a", "b", "c"});
}

TEST_CASE("each style is set in its own role") {
  Fixed fixed;
  const score::Runs runs = {{"a ", false, false, false, {}},
                            {"b ", true, false, false, {}},
                            {"c ", false, true, false, {}},
                            {"d ", true, true, false, {}},
                            {"e", false, false, true, {}}};
  const auto lines = layout::set_paragraph(runs, 400, {}, fixed.type);
  REQUIRE(lines.size() == 1);
  std::vector<int> roles;
  for (const auto& run : all_of<sheet::GlyphRun>(lines[0].items)) roles.push_back(run.font);
  const auto font = [](Role role) { return static_cast<int>(role); };
  CHECK(roles == std::vector<int>{font(Role::body), font(Role::body_emphasis), font(Role::body_strong),
                                  font(Role::body_strong_emphasis), font(Role::code)});
}

TEST_CASE("accidentals come from the music font, 1.2 times the size, raised by 0.22 of it") {
  Fixed fixed;
  const auto words = fixed.type.set(Role::body, "B\u266E,", sheet::Part::text);
  const auto runs = all_of<sheet::GlyphRun>(words.items);
  REQUIRE(runs.size() == 3);
  CHECK(runs[1].text == "\u266E");
  CHECK(runs[1].font == static_cast<int>(Role::music));
  CHECK(runs[1].size == Approx(10.5 * 1.2));
  CHECK(runs[1].glyphs[0].y == Approx(-0.22 * 10.5));
  CHECK(runs[2].glyphs[0].x > runs[1].glyphs[0].x + 6.3 - 1e-9);
  CHECK(words.width > 5.25 + 6.3 + 5.25);
}

TEST_CASE("a link is an area over its words, underlined, and its words are a group of their own") {
  Fixed fixed;
  const score::Runs runs = {{"see ", false, false, false, {}},
                            {"the page", false, false, false, "https://shed.example/"}};
  const auto lines = layout::set_paragraph(runs, 400, {}, fixed.type);
  const auto links = all_of<sheet::Link>(lines[0].items);
  REQUIRE(links.size() == 1);
  CHECK(links[0].uri == "https://shed.example/");
  CHECK(links[0].area.left == Approx(body(fixed, 4)));
  CHECK(links[0].area.right == Approx(body(fixed, 12)));
  const auto groups = all_of<sheet::Group>(lines[0].items);
  REQUIRE(groups.size() == 1);
  CHECK(groups[0].tag == sheet::Tag::link);
}

TEST_CASE("paragraphs keep two lines together at either end") {
  Fixed fixed;
  const Blocks blocks = layout::set_prose({paragraph("a b c d"), paragraph("e")}, body(fixed, 1), fixed.setter);
  REQUIRE(blocks.size() == 5);
  CHECK(blocks[0].keep_with_next);
  CHECK_FALSE(blocks[1].keep_with_next);
  CHECK(blocks[2].keep_with_next);
  CHECK_FALSE(blocks[3].keep_with_next);
  CHECK(blocks[1].gap == fixed.look.measures.body_leading);
  CHECK(blocks[4].gap == fixed.look.measures.body_leading + fixed.look.measures.paragraph_gap);
  // The lines of one paragraph lie in one group, those of the next in another.
  CHECK(blocks[0].nests[0].id == blocks[3].nests[0].id);
  CHECK(blocks[0].nests[0].id != blocks[4].nests[0].id);
}

namespace {

using Kind = score::Block::Kind;
using In = std::vector<score::Container>;
constexpr auto list = score::Container::list;
constexpr auto quote = score::Container::quote;

score::Block block(Kind kind, std::string text, In inside = {}, int opens = 0, std::optional<int> ordinal = {}) {
  score::Block made;
  made.kind = kind;
  if (!text.empty()) made.runs = plain_run(std::move(text));
  made.inside = std::move(inside);
  made.opens = opens;
  made.ordinal = ordinal;
  return made;
}

double first_x(const layout::Block& block) {
  return all_of<sheet::GlyphRun>(block.items).at(0).glyphs.at(0).x;
}

}  // namespace

TEST_CASE("list items hang from their numbers, nested ones further in") {
  Fixed fixed;
  const Blocks blocks =
      layout::set_prose({block(Kind::list_item, "low tide", {list}, 1, 1),
                         block(Kind::list_item, "mud", {list, list}, 1), block(Kind::paragraph, "more", {list})},
                        400, fixed.setter);
  REQUIRE(blocks.size() == 3);
  const auto first = all_of<sheet::GlyphRun>(blocks[0].items);
  REQUIRE(first.size() == 2);
  CHECK(first[0].text == "1");
  CHECK(first[0].glyphs[0].x == 0);
  CHECK(first[1].glyphs[0].x == 14);
  const auto second = all_of<sheet::GlyphRun>(blocks[1].items);
  CHECK(second[0].text == "\u2022");
  CHECK(second[0].glyphs[0].x == 14);
  CHECK(second[1].glyphs[0].x == 28);
  CHECK(first_x(blocks[2]) == 14);
  CHECK(blocks[0].nests[0].tag == sheet::Tag::list);
  CHECK(blocks[0].nests[0].id == blocks[1].nests[0].id);
  // A list in an item lies in what the item says.
  std::vector<sheet::Tag> tags;
  for (const layout::Nest& nest : blocks[1].nests) tags.push_back(nest.tag);
  using sheet::Tag;
  CHECK(tags == std::vector{Tag::list, Tag::list_item, Tag::list_body, Tag::list, Tag::list_item, Tag::list_body,
                            Tag::paragraph});
}

TEST_CASE("a number of three figures pushes its item out rather than run into it") {
  Fixed fixed;
  const Blocks blocks = layout::set_prose({block(Kind::list_item, "last", {list}, 1, 1000)}, 400, fixed.setter);
  const auto runs = all_of<sheet::GlyphRun>(blocks[0].items);
  CHECK(runs[1].glyphs[0].x >= 16 + 4);
}

TEST_CASE("a quote stands in on both sides, its rule runs through from paragraph to paragraph") {
  Fixed fixed;
  const Blocks blocks =
      layout::set_prose({block(Kind::paragraph, "said", {quote}, 1), block(Kind::paragraph, "and said", {quote}),
                         block(Kind::paragraph, "another", {quote}, 1), block(Kind::paragraph, "plain")},
                        400, fixed.setter);
  REQUIRE(blocks.size() == 4);
  CHECK(first_x(blocks[0]) == 14);
  CHECK(first_x(blocks[3]) == 0);
  const auto bar = [](const layout::Block& block) { return all_of<sheet::Rule>(block.items).at(0); };
  // The second line's rule reaches up to where the first one's ends; the next quote has one of its own.
  CHECK(bar(blocks[1]).from.y + blocks[1].gap == Approx(bar(blocks[0]).to.y));
  CHECK(bar(blocks[2]).from.y == Approx(-blocks[2].ascent));
  CHECK(blocks[1].gap_least == blocks[1].gap_most);
  CHECK(all_of<sheet::Rule>(blocks[3].items).empty());
}

TEST_CASE("code keeps its lines and its spaces") {
  Fixed fixed;
  score::Block code = block(Kind::code, "");
  code.runs = {score::Run{"G|--2--\n\n  D|", false, false, true, std::nullopt}};
  const Blocks blocks = layout::set_prose({code}, 400, fixed.setter);
  REQUIRE(blocks.size() == 3);
  CHECK(spelled(blocks[0].items) == "G|--2-- ");
  CHECK(spelled(blocks[2].items) == "  D| ");
  CHECK(first_x(blocks[0]) == 14);
  CHECK(all_of<sheet::GlyphRun>(blocks[0].items)[0].font == static_cast<int>(Role::code));
}

TEST_CASE("code keeps the accidentals of its own font, so that its columns stand") {
  Fixed fixed;
  const auto width = [&](const char* text) { return fixed.type.width(Role::code, text); };
  CHECK(width("E\u266D |") == Approx(width("Eb |")));
  CHECK(all_of<sheet::GlyphRun>(fixed.type.set(Role::code, "\u266D", sheet::Part::text).items)[0].font ==
        static_cast<int>(Role::code));
  // A font without them has the music font's.
  fixed.metrics.missing.insert(U'\u266D');
  CHECK(all_of<sheet::GlyphRun>(fixed.type.set(Role::code, "\u266D", sheet::Part::text).items).empty());
  CHECK(fixed.type.missing().at(0).role == Role::music);
}

TEST_CASE("a practice note keeps its lists, code and quotes, each in from its number") {
  Fixed fixed;
  score::Block code = block(Kind::code, "");
  code.runs = {score::Run{"G|-2\nD|--", false, false, true, std::nullopt}};
  const score::Blocks nested = {block(Kind::paragraph, "Hum."), block(Kind::list_item, "low", {list}, 1),
                                block(Kind::list_item, "lower", {list, list}, 1, 1),
                                block(Kind::list_item, "high", {list})};
  const Blocks blocks = layout::set_numbered({nested, {code}, {block(Kind::paragraph, "Rest.")}}, 400, fixed.setter);
  CHECK(spelled_lines(blocks) ==
        std::vector<std::string>{"1Hum.", "\u2022low", "1lower", "\u2022high", "2G|-2 ", "D|-- ", "3Rest."});
  const auto x_of = [&](std::size_t line) {
    std::vector<double> x;
    for (const auto& run : all_of<sheet::GlyphRun>(blocks[line].items)) x.push_back(run.glyphs.front().x);
    return x;
  };
  CHECK(x_of(0) == std::vector<double>{0, 14});
  CHECK(x_of(1) == std::vector<double>{14, 28});
  CHECK(x_of(2) == std::vector<double>{28, 42});
  CHECK(x_of(3) == std::vector<double>{14, 28});
  CHECK(x_of(4) == std::vector<double>{0, 28});
  CHECK(x_of(5) == std::vector<double>{28});
  CHECK(x_of(6) == std::vector<double>{0, 14});
  // All of it is one list, as a reader tells it.
  for (const layout::Block& block : blocks) {
    CHECK(block.nests.front().tag == sheet::Tag::list);
    CHECK(block.nests.front().id == blocks[0].nests.front().id);
  }
}

TEST_CASE("lines of code that a column would break are not set in one") {
  Fixed fixed;
  score::Block code = block(Kind::code, "");
  const double character = fixed.look.style(Role::code).size / 2;
  code.runs = {score::Run{"G|--\n" + std::string(20, '-'), false, false, true, std::nullopt}};
  CHECK(layout::code_fits({code}, 28 + 20 * character + 0.01, fixed.setter));
  CHECK_FALSE(layout::code_fits({code}, 28 + 20 * character - 0.01, fixed.setter));
  CHECK(layout::code_fits({block(Kind::paragraph, std::string(200, '-'))}, 30, fixed.setter));
}

TEST_CASE("headings of a text are smaller than that of the block that holds it, and its level lies below") {
  Fixed fixed;
  score::Block first = block(Kind::heading, "Tide");
  first.level = 1;
  score::Block second = block(Kind::heading, "Mud");
  second.level = 2;
  const auto set = [&](int under) { return layout::set_prose({first, second}, 400, fixed.setter, under); };
  const Blocks of_lesson = set(1);
  CHECK(of_lesson[0].nests.back().tag == sheet::Tag::heading2);
  CHECK(of_lesson[1].nests.back().tag == sheet::Tag::heading3);
  const Blocks of_example = set(2);
  CHECK(of_example[0].nests.back().tag == sheet::Tag::heading3);
  CHECK(of_example[0].keep_with_next);
  const double size = all_of<sheet::GlyphRun>(of_example[0].items)[0].size;
  CHECK(size < fixed.look.style(Role::heading).size);
  CHECK(size > all_of<sheet::GlyphRun>(of_example[1].items)[0].size);
}

TEST_CASE("the mark of an item stands on the first line of whatever it begins with") {
  Fixed fixed;
  score::Block head = block(Kind::heading, "Tide", {list});
  head.level = 2;
  const Blocks blocks =
      layout::set_prose({block(Kind::list_item, "", {list}, 1, 1), head, block(Kind::list_item, "", {list}, 0, 2),
                         block(Kind::list_item, "next", {list}, 0, 3), block(Kind::list_item, "", {list}, 0, 4),
                         block(Kind::paragraph, "said", {list, quote}, 1)},
                        400, fixed.setter);
  CHECK(spelled_lines(blocks) == std::vector<std::string>{"1Tide", "2", "3next", "4said"});
}

TEST_CASE("nesting without end stays in the measure") {
  Fixed fixed;
  score::Blocks deep;
  for (std::size_t level = 1; level <= 60; ++level) {
    deep.push_back(block(Kind::list_item, "mud and more mud", In(level, list), 1));
  }
  for (std::size_t level = 1; level <= 60; ++level) {
    deep.push_back(block(Kind::paragraph, "mud and more mud", In(level, quote), 1));
  }
  for (const layout::Block& block : layout::set_prose(deep, 232, fixed.setter)) {
    for (const auto& run : all_of<sheet::GlyphRun>(block.items)) {
      CHECK(run.glyphs.back().x + run.size / 2 <= 232 + 1e-6);
    }
  }
}

TEST_CASE("a character that no font has is noted once for its role") {
  Fixed fixed;
  fixed.metrics.missing.insert(U'\u2603');
  fixed.type.set(Role::body, "a\u2603b\u2603", sheet::Part::text);
  fixed.type.set(Role::body, "\u2603", sheet::Part::text);
  REQUIRE(fixed.type.missing().size() == 1);
  CHECK(fixed.type.missing()[0].code_point == U'\u2603');
}
