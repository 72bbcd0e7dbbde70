#include "spoken/spoken.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "spoken/sample.h"
#include "support/golden.h"
#include "words/language.h"

namespace fretsheaf::spoken::test {
namespace {

std::vector<std::string> bars(const score::Score& score) {
  return alternatives(score).examples.at(0).bars;
}

}  // namespace

TEST_CASE("a bar is told bar and beat first, string before fret, then how and how long") {
  const auto said =
      bars(example("count | 1   2 & 3 (4) | 1 & 2   3 |\n"
                   "chord | i7      V7    | i         |\n"
                   "mark  | mf            |           |\n"
                   "G     |               | 2       0 |\n"
                   "D     | 5>  7 h9      | 2         |\n"
                   "A     |         0~    |   x /5    |\n"));
  CHECK(said.at(0) ==
        "Bar 1, chord D minor 7, mezzo forte. Beat 1: D string, 5th fret, accent, 1 beat. Beat 2: D string, 7th fret, "
        "half a beat. Beat 2 and: D string, 9th fret, hammer-on, half a beat. Beat 3, chord A 7: A string, open, "
        "vibrato, 1 beat. Beat 4: rest, 1 beat.");
  CHECK(said.at(1) ==
        "Bar 2, chord D minor. Beat 1, together: D string, 2nd fret; G string, 2nd fret; half a beat. Beat 1 and: A "
        "string, dead note, half a beat. Beat 2: A string, 5th fret, slide up, 1 beat. Beat 3: G string, "
        "open, 2 beats.");
}

TEST_CASE("what repeats is told by the bar that it repeats, and only where it is just so") {
  const auto said =
      bars(example("count | 1 2 & 3 | 1 2 & 3 | 1 2 & 3 | 1 2 & 3  | 1 2 3 & | 1 2 & 3 |\n"
                   "D     | 5 7   5 | 5 7   5 | 3 5   3 | 5 7>  5  | 5 7   5 | 2 4   2 |\n"
                   "A     |     5   |     5   |     3   |     5    |     5   |     0   |\n"));
  CHECK(said.at(1) == "Bar 2. As bar 1.");
  CHECK(said.at(2) == "Bar 3. As bar 1, 2 frets lower.");
  CHECK(said.at(3).find("As bar") == std::string::npos);  // an accent more
  CHECK(said.at(4).find("As bar") == std::string::npos);  // another rhythm
  CHECK(said.at(5).find("As bar") == std::string::npos);  // an open string does not move
}

TEST_CASE("a bar of two parts is not what another is likened to") {
  const auto said =
      bars(score_of("title = \"Tide\"\nkey = \"D minor\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
                    "count | 1 2 3 || 4 & | 1 2 3 || 4 & |\n"
                    "G     | 5 7 5 || 5 5 | 5 7 5 || 5 5 |\n'''\n"));
  REQUIRE(said.size() == 4);
  CHECK(said.at(1).starts_with("Bar 1, second part. "));
  CHECK(said.at(2) ==
        "Bar 2. Each lasts 1 beat. Beat 1: G string, 5th fret. Beat 2: G string, 7th fret. Beat 3: G "
        "string, 5th fret. Double bar line.");
  CHECK(said.at(3).find("As bar") == std::string::npos);
}

namespace {

// A lesson in which nearly every sentence is said.
std::string dense(const std::string& language) {
  return "title = \"Coil\"\nkey = \"D minor\"\ninstrument = \"bass\"\ncapo = 1\npractice-log = 3\nlanguage = \"" +
         language + R"("
[[example]]
tempo = { from = 60, to = 90, step = 10, passes = 1 }
build-up = "pairs"
feel = "swing"
labels = ["notes", "chord-degrees", "key-degrees"]
form = { bars = "i7 | IV7,V7 | i7 | i7 | i7 | N.C.", here = "1-4" }
neck = { of = "notes", labels = "notes" }
shapes = ["Dm7"]
tab = '''
)" + aligned(R"(count   |: 1     2  & 3 la li 4 e & a | 1     2   (3) 4      :| 1 2 3 4 |  1 +1/5 2 |
meter   ||||  2/4|
section |  A|||  B|
ending  || 1.| 2.||
chord   |  i7         V7b9| N.C.| iiø|  Bbmaj7/A|
mark    |  mf    <-------------------| f             fermata| PM--|  let-|
road    || 3x||         fine|
G       |  5>  4h5 (7)| 7^1/2         5.| 7 7 7 7||
D       |  5     =| 5     x|| /7|
A       |             3 2  1|||    5|
E       |                     3 1 3 1|               3||         3|
finger  |  1,1|               1,2| 3||
hand    |  i,m|| p i m a|  T P|
stroke  |  d|| u||
lyric   |  tide||||
text    |        slow||||
)") + R"('''
[[example]]
hide = ["frets", "rhythm"]
tab = '''
count  | 1 2 & 3 4 | 1   2   3 4 |
mark   | <-----    |             |
G      | 5 7 5 4 5 | 5   5       |
'''
[[example]]
tab = '''
count  | 1 2 3 4 | 1 2 3 4 | (1)     | 1 2 3 4 | 1 2 3 4 |
G      | 2 3 2 3 | 4 5 4 5 |         | 3 4 3 4 | 2 3 2 3 |
'''
[[example]]
blank-bars = 1
[[example]]
tab = '''
count | 1 2 3 4   |
play  | * x > (*) |
'''
)";
}

}  // namespace

TEST_CASE("a lesson is said in seven languages") {
  std::string all;
  for (const words::Language language : words::languages) {
    const std::string code(words::language_code(language));
    all += "==== " + code + "\n\n" + as_text(walk_through(score_of(dense(code)))) + "\n";
    CHECK(all.find('{') == std::string::npos);  // every hole is filled
  }
  check_golden("spoken.txt", all);
}

}  // namespace fretsheaf::spoken::test
