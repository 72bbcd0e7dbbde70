#include "score/commonmark.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::score;

namespace {

using Kind = Block::Kind;

std::string same(std::string_view text) {
  return std::string(text);
}

// "{{…}}" becomes "*♭*", which must not be read as a sign again.
std::string starred(std::string_view text) {
  std::string out(text);
  for (auto at = out.find("{{x}}"); at != std::string::npos; at = out.find("{{x}}")) out.replace(at, 5, "*♭*");
  return out;
}

Runs runs(std::string_view text) {
  Blocks blocks = read_blocks(text, same);
  REQUIRE(blocks.size() == 1);
  return blocks.front().runs;
}

Run words(std::string text) {
  return {std::move(text), false, false, false, {}};
}

}  // namespace

// The rules and the examples' numbers are those of the CommonMark specification 0.30 (from memory).

TEST_CASE("inline CommonMark becomes runs") {
  CHECK(runs("Plain words.") == Runs{words("Plain words.")});
  CHECK(runs("a *b* **c** `d`") == Runs{words("a "),
                                        {"b", true, false, false, {}},
                                        words(" "),
                                        {"c", false, true, false, {}},
                                        words(" "),
                                        {"d", false, false, true, {}}});
  CHECK(runs("***b***") == Runs{{"b", true, true, false, {}}});
  CHECK(runs("[the *pier*](https://example.org/a)") == Runs{{"the ", false, false, false, "https://example.org/a"},
                                                            {"pier", true, false, false, "https://example.org/a"}});
  CHECK(runs("<https://example.org>") == Runs{{"https://example.org", false, false, false, "https://example.org"}});
  CHECK(runs("one\ntwo") == Runs{words("one two")});
  CHECK(runs("one  \ntwo\\\nthree") == Runs{words("one\ntwo\nthree")});
  CHECK(runs("a &amp; b \\*c\\*") == Runs{words("a & b *c*")});
  CHECK(runs("![a boat](boat.png)") == Runs{words("a boat")});
  CHECK(runs("1 <b>2</b>") == Runs{words("1 <b>2</b>")});
  CHECK(read_blocks("", same).empty());
}

TEST_CASE("blocks keep their kind, depth and number") {
  const Blocks blocks = read_blocks(
      "# Head\n\npara\n\n- one\n  1. two\n  2. three\n\n     more of three\n- four\n\n> said\n> > deeper\n\n---\n\n    "
      "code *x*\n    y\n",
      same);
  REQUIRE(blocks.size() == 11);
  CHECK(blocks[0] == Block{Kind::heading, 1, 0, {words("Head")}});
  CHECK(blocks[1] == Block{Kind::paragraph, 0, 0, {words("para")}});
  CHECK(blocks[2] == Block{Kind::list_item, 1, 0, {words("one")}});
  CHECK(blocks[3] == Block{Kind::list_item, 2, 1, {words("two")}});
  CHECK(blocks[4] == Block{Kind::list_item, 2, 2, {words("three")}});
  CHECK(blocks[5] == Block{Kind::paragraph, 2, 0, {words("more of three")}});
  CHECK(blocks[6] == Block{Kind::list_item, 1, 0, {words("four")}});
  CHECK(blocks[7] == Block{Kind::quote, 1, 0, {words("said")}});
  CHECK(blocks[8] == Block{Kind::quote, 2, 0, {words("deeper")}});
  CHECK(blocks[9] == Block{Kind::rule, 0, 0, {}});
  CHECK(blocks[10] == Block{Kind::paragraph, 0, 0, {{"code *x*\ny", false, false, true, {}}}});
}

TEST_CASE("a numbered list goes on from its first number; an empty item keeps its mark") {
  const Blocks blocks = read_blocks("7. a\n8.\n9. - b\n", same);
  REQUIRE(blocks.size() == 4);
  CHECK(blocks[0].ordinal == 7);
  CHECK(blocks[1] == Block{Kind::list_item, 1, 8, {}});
  CHECK(blocks[2] == Block{Kind::list_item, 1, 9, {}});
  CHECK(blocks[3] == Block{Kind::list_item, 2, 0, {words("b")}});
}

TEST_CASE("what is filled in is words, never signs") {
  const Blocks blocks = read_blocks("see *{{x}}*, `{{x}}` and {{x}}", starred);
  REQUIRE(blocks.size() == 1);
  CHECK(blocks.front().runs == Runs{words("see "),
                                    {"*♭*", true, false, false, {}},
                                    words(", "),
                                    {"*♭*", false, false, true, {}},
                                    words(" and *♭*")});
}

TEST_CASE("a title is one line without blocks") {
  CHECK(read_title("1. The pulse", same) == Runs{words("1. The pulse")});
  CHECK(read_title("# 3", same) == Runs{words("# 3")});
  CHECK(read_title("*Low* tide", same) == Runs{{"Low", true, false, false, {}}, words(" tide")});
  CHECK(read_title("_Low_ tide", same) == Runs{{"Low", true, false, false, {}}, words(" tide")});
  CHECK(read_title("- a\n- b", same) == Runs{words("- a - b")});
  CHECK(read_title("    far in", same) == Runs{words("    far in")});
  CHECK(read_title("", same).empty());
}

TEST_CASE("a practice note is one stretch of runs") {
  CHECK(read_note("Play *softly*.", same) == Runs{words("Play "), {"softly", true, false, false, {}}, words(".")});
  CHECK(plain(read_note("2. a\n3. b", same)) == "2. a 3. b");
  CHECK(read_note("one\n\n- two", same) == Runs{words("one"), words("\n• "), words("two")});
}

TEST_CASE("deep nesting costs no stack") {
  const Blocks quotes = read_blocks(std::string(20000, '>') + " end", same);
  REQUIRE(quotes.size() == 1);
  CHECK(quotes.front().level == 20000);
  CHECK(plain(read_blocks(std::string(3000, '*') + "a" + std::string(3000, '*'), same).front().runs) == "a");
}
