#include "typeface/line_breaks.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::typeface;

namespace {

// The pieces between breaks, joined by `/`.
std::string broken(std::string_view text, const std::string& language = "en") {
  std::string out;
  std::size_t from = 0;
  for (const std::size_t at : line_breaks(text, language)) {
    out.append(text.substr(from, at - from)) += '/';
    from = at;
  }
  return out.append(text.substr(from));
}

}  // namespace

// The rules are those of Unicode Standard Annex #14; their numbers stand beside the checks.
TEST_CASE("Lines break after spaces and hyphens, as Annex 14 has it") {
  CHECK(broken("Land on the third") == "Land /on /the /third");  // LB18
  CHECK(broken("two  spaces") == "two  /spaces");                // LB7, LB18
  CHECK(broken("well-known") == "well-/known");                  // LB21
  CHECK(broken("1st\u20132nd") == "1st\u2013/2nd");              // BA, LB21
  CHECK(broken("prac\u00ADtice") == "prac\u00AD/tice");          // BA, LB21
  CHECK(broken("one\u200Btwo") == "one\u200B/two");              // LB8
  CHECK(broken("line\nnext") == "line\n/next");                  // LB5
}

TEST_CASE("Lines do not break where Annex 14 forbids it") {
  CHECK(broken("no\u00A0break") == "no\u00A0break");                // LB12
  CHECK(broken("word\u2060joined") == "word\u2060joined");          // LB11
  CHECK(broken("stop, (now) please!") == "stop, /(now) /please!");  // LB13, LB14
  CHECK(broken("92.5 bpm") == "92.5 /bpm");                         // LB25
  CHECK(broken("-5") == "-5");                                      // LB25
  CHECK(broken("e\u0301t\u00E9") == "e\u0301t\u00E9");              // LB9
}

TEST_CASE("U+FFFF, which is no character, does not end a text") {
  CHECK(broken("walk\uFFFF up") == "walk\uFFFF /up");  // AL (as XX, by LB1), LB18
  CHECK(broken("\uFFFF\uFFFF") == "\uFFFF\uFFFF");     // LB28
}

TEST_CASE("No text, and one of a letter, have no breaks") {
  CHECK(line_breaks("", "en").empty());
  CHECK(line_breaks("a", "").empty());
  CHECK(line_breaks("a ", "de").empty());
}
