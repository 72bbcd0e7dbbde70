#include "source/diagnostic.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "source/text.h"

using namespace fretsheaf::source;

namespace {

std::string rendered(const std::string& bytes, std::uint32_t begin, std::uint32_t end, std::string help = {}) {
  Files files;
  files.add({"tide.lesson.toml", bytes});
  return render({Severity::error, Code::unknown_key, {begin, end, 0}, "no such key", std::move(help)}, files);
}

}  // namespace

TEST_CASE("an error is a place, a message, the line, carets and help") {
  CHECK(rendered("title = \"x\"\ntemppo = 3\n", 12, 18, "did you mean `tempo`?") ==
        "tide.lesson.toml:2:1: error: no such key\n"
        "  temppo = 3\n"
        "  ^^^^^^\n"
        "help: did you mean `tempo`?\n");
}

TEST_CASE("a warning says so, and help may be missing") {
  Files files;
  files.add({"a", "x"});
  CHECK(render({Severity::warning, Code::unknown_key, {0, 1, 0}, "odd", ""}, files) ==
        "a:1:1: warning: odd\n  x\n  ^\n");
}

TEST_CASE("carets stand one column a code point, tabs copied") {
  CHECK(rendered("a\té♭𝄞 = 1", 2, 11) ==
        "tide.lesson.toml:1:3: error: no such key\n"
        "  a\té♭𝄞 = 1\n"
        "   \t^^^\n");
}

// Wide: East_Asian_Width=W in EastAsianWidth.txt of Unicode 14 (U+1F3B8, U+6F6E); joining: General_Category=Mn in its
// UnicodeData.txt (U+0301); one cell: both of other values there (U+266D, U+1D11E).
TEST_CASE("carets stand under what a terminal shows: wide characters take two cells, joining ones none") {
  CHECK(rendered("a🎸潮b = 1", 8, 9) ==
        "tide.lesson.toml:1:4: error: no such key\n"
        "  a🎸潮b = 1\n"
        "       ^\n");
  CHECK(rendered("e\u0301♭𝄞b", 10, 11) ==
        "tide.lesson.toml:1:5: error: no such key\n"
        "  e\u0301♭𝄞b\n"
        "     ^\n");
  CHECK(rendered("a🎸b", 1, 5) ==
        "tide.lesson.toml:1:2: error: no such key\n"
        "  a🎸b\n"
        "   ^^\n");
}

TEST_CASE("a range over several lines is marked to the end of its first") {
  CHECK(rendered("ab cd\r\nef\r\n", 3, 9) ==
        "tide.lesson.toml:1:4: error: no such key\n"
        "  ab cd\n"
        "     ^^\n");
}

TEST_CASE("an empty range gets one caret, past the line's end too") {
  CHECK(rendered("ab", 1, 1) == "tide.lesson.toml:1:2: error: no such key\n  ab\n   ^\n");
  CHECK(rendered("ab\n", 2, 3) == "tide.lesson.toml:1:3: error: no such key\n  ab\n    ^\n");
}

TEST_CASE("an empty line, the end of a file and an empty file can be shown") {
  CHECK(rendered("a\n\nb", 2, 2) == "tide.lesson.toml:2:1: error: no such key\n\n  ^\n");
  CHECK(rendered("a\n", 2, 2) == "tide.lesson.toml:2:1: error: no such key\n\n  ^\n");
  CHECK(rendered("", 0, 0) == "tide.lesson.toml:1:1: error: no such key\n\n  ^\n");
}

TEST_CASE("a byte-order mark moves no caret") {
  CHECK(rendered("\xEF\xBB\xBFkeyy = 1", 3, 7) == "tide.lesson.toml:1:1: error: no such key\n  keyy = 1\n  ^^^^\n");
}

TEST_CASE("control characters are not sent to the terminal") {
  CHECK(rendered("a\x1B[31mb\x7F\u009B", 0, 1) ==
        "tide.lesson.toml:1:1: error: no such key\n  a\uFFFD[31mb\uFFFD\uFFFD\n  ^\n");
}

TEST_CASE("of a very long line the part around the place is shown") {
  const std::string bytes = std::string(500, 'a') + "ERR" + std::string(500, 'b');
  CHECK(rendered(bytes, 500, 503) == "tide.lesson.toml:1:501: error: no such key\n  …" + std::string(60, 'a') + "ERR" +
                                         std::string(97, 'b') + "…\n  " + std::string(61, ' ') + "^^^\n");
  CHECK(rendered(bytes, 0, 1003) == "tide.lesson.toml:1:1: error: no such key\n  " + std::string(160, 'a') + "…\n  " +
                                        std::string(160, '^') + "\n");
  CHECK(rendered(bytes, 1003, 1003) == "tide.lesson.toml:1:1004: error: no such key\n  …" + std::string(60, 'b') +
                                           "\n  " + std::string(61, ' ') + "^\n");
}

TEST_CASE("a diagnostic of no known file has a message only") {
  CHECK(render({Severity::error, Code::unknown_key, {0, 0, 0}, "gone", "look again"}, Files{}) ==
        "error: gone\nhelp: look again\n");
}

TEST_CASE("diagnostics are sorted by file and place, errors first, equal ones once") {
  Diagnostics all;
  all.warning(Code::unknown_key, {5, 6, 1}, "other file");
  all.warning(Code::unknown_key, {5, 6, 0}, "warning at 5");
  all.error(Code::bar_too_long, {9, 10, 0}, "late");
  all.error(Code::bar_too_long, {5, 8, 0}, "error at 5, longer");
  all.error(Code::bar_too_long, {5, 6, 0}, "error at 5");
  all.error(Code::bar_too_long, {9, 10, 0}, "late");
  all.error(Code::bar_too_long, {9, 10, 0}, "late", "with help");
  std::vector<std::string> messages;
  for (const Diagnostic& d : all.sorted()) messages.push_back(d.message + d.help);
  CHECK(messages == std::vector<std::string>{"error at 5", "error at 5, longer", "warning at 5", "late",
                                             "latewith help", "other file"});
  CHECK(all.list().size() == 7);
  CHECK(all.has_errors());
}

TEST_CASE("no control character of a file gets to a terminal") {
  Files files;
  files.add({"a\x1b[31m.toml", "key = \"\x1b[31m\"\n"});
  CHECK(render({Severity::error, Code::unknown_key, {7, 8, 0}, "no '\x1b'", "take '\x1b' out"}, files) ==
        "a\uFFFD[31m.toml:1:8: error: no '\uFFFD'\n  key = \"\uFFFD[31m\"\n         ^\nhelp: take '\uFFFD' out\n");
}

TEST_CASE("warnings alone are no errors") {
  Diagnostics all;
  CHECK_FALSE(all.has_errors());
  all.warning(Code::unknown_key, {}, "odd");
  CHECK_FALSE(all.has_errors());
}

TEST_CASE("ranges join to the smallest that holds both") {
  CHECK(joined({3, 5, 2}, {9, 12, 2}) == Range{3, 12, 2});
  CHECK(joined({9, 12, 2}, {3, 10, 2}) == Range{3, 12, 2});
}

TEST_CASE("past ten thousand findings it is said once that there are more") {
  Diagnostics all;
  for (std::uint32_t i = 0; i < 10000; ++i) all.warning(Code::unknown_key, {i, i + 1, 0}, "odd");
  CHECK(all.list().size() == 10000);
  CHECK(all.list().back().message == "odd");
  for (std::uint32_t i = 10000; i < 20000; ++i) all.error(Code::unknown_key, {i, i + 1, 0}, "odd");
  REQUIRE(all.list().size() == 10001);
  CHECK(all.has_errors());
  CHECK(all.list().back().severity == Severity::error);
  CHECK(all.list().back().range == Range{10000, 10001, 0});
  CHECK(all.list().back().message == "there is more wrong from here on; only so many findings are said");
  CHECK(all.list().back().help == "mend those before it and try again");
}

TEST_CASE("of a line of many errors each is shown with what is around it, tabs and wide letters too") {
  const std::string bytes = std::string(200, 'a') + "\t\u00e9" + std::string(59, 'b') + "ERR" + std::string(3, 'c');
  CHECK(rendered(bytes, 262, 265) == "tide.lesson.toml:1:262: error: no such key\n  …\u00e9" + std::string(59, 'b') +
                                         "ERR" + std::string(3, 'c') + "\n  " + std::string(61, ' ') + "^^^\n");
  CHECK(rendered(bytes, 203, 204) == "tide.lesson.toml:1:203: error: no such key\n  …" + std::string(58, 'a') +
                                         "\t\u00e9" + std::string(59, 'b') + "ERR" + std::string(3, 'c') + "\n  " +
                                         std::string(59, ' ') + "\t ^\n");
}
