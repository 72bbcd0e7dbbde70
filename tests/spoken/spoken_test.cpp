#include "spoken/spoken.h"

#include <catch2/catch.hpp>
#include <string>

#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "score/build.h"

namespace fretsheaf::spoken {
namespace {

score::Score score_of(const std::string& text, score::Copy copy = score::Copy::student) {
  const platform::MemorySystem system;
  lesson::ReadLesson read = lesson::read_lesson("tide.lesson.toml", text, system);
  for (const auto& one : read.diagnostics.list()) {
    if (one.severity == source::Severity::error) FAIL(one.message);
  }
  source::Diagnostics diagnostics;
  return score::build_score(*read.lesson, diagnostics, copy);
}

// One example on a bass in D minor: `keys` of the lesson, `rows` of its grid.
score::Score example(const std::string& rows, const std::string& keys = "", const std::string& own = "") {
  return score_of("title = \"Tide\"\nkey = \"D minor\"\ninstrument = \"bass\"\n" + keys + "[[example]]\n" + own +
                  "tab = '''\n" + rows + "'''\n");
}

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

}  // namespace fretsheaf::spoken
