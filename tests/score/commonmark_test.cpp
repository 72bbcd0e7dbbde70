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

// Blocks in one line each: what they lie in from the outermost ("l" a list, "q" a quote, capital where it begins
// there), their kind, and their words.
std::string outline(std::string_view text) {
  std::string out;
  for (const Block& block : read_blocks(text, same)) {
    const auto old = block.inside.size() - static_cast<std::size_t>(block.opens);
    for (std::size_t i = 0; i < block.inside.size(); ++i) {
      const char letter = block.inside[i] == Container::list ? 'l' : 'q';
      out += i < old ? letter : static_cast<char>(letter - 'a' + 'A');
    }
    if (!block.inside.empty()) out += ' ';
    if (block.kind == Kind::heading) out += std::string(static_cast<std::size_t>(block.level), '#') + " ";
    if (block.kind == Kind::list_item)
      out += (block.ordinal ? std::to_string(*block.ordinal) + "." : "-") + std::string(" ");
    if (block.kind == Kind::code) out += "` ";
    if (block.kind == Kind::rule) out += "---";
    for (const Run& run : block.runs) out += run.text;
    out += "\n";
  }
  return out;
}

TEST_CASE("blocks keep their kind, depth and number") {
  CHECK(outline("# Head\n\npara\n\n- one\n  1. two\n  2. three\n\n     more of three\n- four\n\n> said\n> > "
                "deeper\n\n---\n\n    "
                "code *x*\n    y\n") ==
        "# Head\npara\nL - one\nlL 1. two\nll 2. three\nll more of three\nl - four\nQ said\nqQ deeper\n---\n` code "
        "*x*\ny\n");
}

TEST_CASE("a numbered list goes on from its first number, and an empty item keeps its mark") {
  CHECK(outline("7. a\n8.\n9. - b\n") == "L 7. a\nl 8. \nl 9. \nlL - b\n");
  CHECK(outline("0. a\n") == "L 0. a\n");
}

// The families of the specification's examples, by its sections.
TEST_CASE("each family of blocks is read as the specification says") {
  // Thematic breaks
  CHECK(outline("***\n---\n___\n") == "---\n---\n---\n");
  CHECK(outline("+++\n") == "+++\n");
  CHECK(outline("- foo\n***\n- bar\n") == "L - foo\n---\nL - bar\n");
  // ATX and setext headings
  CHECK(outline("# foo\n## foo\n###### foo\n") == "# foo\n## foo\n###### foo\n");
  CHECK(outline("####### foo\n") == "####### foo\n");
  CHECK(outline("Foo *bar*\n=========\n\nFoo\n---\n") == "# Foo bar\n## Foo\n");
  // Indented and fenced code
  CHECK(outline("    a simple\n      indented code block\n") == "` a simple\n  indented code block\n");
  CHECK(outline("```\n<\n >\n```\n") == "` <\n >\n");
  CHECK(outline("~~~~ ruby\n5h7\n~~~\n~~~~\n") == "` 5h7\n~~~\n");
  // Paragraphs
  CHECK(outline("aaa\nbbb\n\nccc\n") == "aaa bbb\nccc\n");
  CHECK(outline("  aaa\n bbb\n") == "aaa bbb\n");
  // Block quotes, lazy lines, and two of them apart
  CHECK(outline("> # Foo\n> bar\n> baz\n") == "Q # Foo\nq bar baz\n");
  CHECK(outline("> bar\nbaz\n") == "Q bar baz\n");
  CHECK(outline("> foo\n\n> bar\n") == "Q foo\nQ bar\n");
  CHECK(outline("> > > foo\nbar\n") == "QQQ foo bar\n");
  // List items and lists
  CHECK(outline("- foo\n- bar\n+ baz\n") == "L - foo\nl - bar\nL - baz\n");
  CHECK(outline("1. foo\n2. bar\n3) baz\n") == "L 1. foo\nl 2. bar\nL 3. baz\n");
  CHECK(outline("- foo\n  - bar\n    - baz\n      - boo\n") == "L - foo\nlL - bar\nllL - baz\nlllL - boo\n");
  CHECK(outline("1.  A paragraph\n    with two lines.\n\n        indented code\n\n    > A block quote.\n") ==
        "L 1. A paragraph with two lines.\nl ` indented code\nlQ A block quote.\n");
  CHECK(outline("> 1. > Blockquote\ncontinued here.\n") == "QL 1. \nqlQ Blockquote continued here.\n");
  CHECK(outline("- # Foo\n- Bar\n  ---\n  baz\n") == "L - \nl # Foo\nl - \nl ## Bar\nl baz\n");
}

TEST_CASE("each family of inlines is read as the specification says") {
  CHECK(plain(runs("\\!\\\"\\#\\$")) == "!\"#$");
  CHECK(plain(runs("&copy; &AElig; &#35; &nosuch;")) == "© Æ # &nosuch;");
  CHECK(runs("`` foo ` bar ``") == Runs{{"foo ` bar", false, false, true, {}}});
  CHECK(runs("foo*bar*") == Runs{words("foo"), {"bar", true, false, false, {}}});
  CHECK(runs("foo_bar_") == Runs{words("foo_bar_")});
  CHECK(runs("a * foo bar*") == Runs{words("a * foo bar*")});
  CHECK(runs("*foo**bar**baz*") ==
        Runs{{"foo", true, false, false, {}}, {"bar", true, true, false, {}}, {"baz", true, false, false, {}}});
  CHECK(runs("[link](</my uri> \"title\")") == Runs{{"link", false, false, false, "/my uri"}});
  CHECK(runs("[foo]\n\n[foo]: https://example.org \"title\"\n") ==
        Runs{{"foo", false, false, false, "https://example.org"}});
  CHECK(runs("<shed@example.org>") == Runs{{"shed@example.org", false, false, false, "mailto:shed@example.org"}});
  CHECK(runs("foo  \n     bar") == Runs{words("foo\nbar")});
  CHECK(runs("foo\\\nbar") == Runs{words("foo\nbar")});
  CHECK(runs("foo \n baz") == Runs{words("foo baz")});
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

TEST_CASE("a tab is a space between words, and in code leads to the next column of four") {
  CHECK(runs("a\tb *c\td*") == Runs{words("a b "), {"c d", true, false, false, {}}});
  CHECK(runs("```\nG\t|\tx\n\u00e9e\t|\n```").front().text == "G   |   x\n\u00e9e  |");
  CHECK(runs("\tG\t|").front().text == "G   |");
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

TEST_CASE("deep nesting costs no stack") {
  const Blocks quotes = read_blocks(std::string(20000, '>') + " end", same);
  REQUIRE(quotes.size() == 1);
  CHECK(quotes.front().inside.size() == 32);
  CHECK(plain(read_blocks(std::string(3000, '*') + "a" + std::string(3000, '*'), same).front().runs) == "a");
}
