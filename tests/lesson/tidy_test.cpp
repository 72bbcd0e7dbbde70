#include "lesson/tidy.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "lesson/grid_support.h"
#include "lesson/grid_tidy.h"
#include "platform/memory_system.h"
#include "support/project.h"
#include "support/random_lesson.h"

using namespace fretsheaf;
using namespace fretsheaf::lesson;
using grid_test::music_text;
using grid_test::with_crlf;

namespace {

const std::string heading =
    "title = \"Low tide\"  # a remark\nkey = \"D dorian\"\ninstrument = \"bass\"\n\n[[example]]\n";

std::string lesson_of(const std::string& grid) {
  return heading + "tab = '''\n" + grid + "'''\n";
}

// With the logo that the contract's own example names.
const platform::MemorySystem& shed() {
  static const platform::MemorySystem system = [] {
    platform::MemorySystem made;
    made.files["lantern.svg"] = "<svg/>";
    return made;
  }();
  return system;
}

Tidied tidied(const std::string& bytes) {
  return tidy("tide.lesson.toml", bytes, shed());
}

std::string notes_text(const Tidied& result) {
  std::string text;
  for (const TidyNote& note : result.notes) text += std::to_string(note.line) + ": " + note.what + "\n";
  return text;
}

// A grid, what it becomes, and what is said of it.
struct TidyCase {
  std::string grid;
  std::string tidy;
  std::string notes = "7: columns out of line\n";
};

void check(const TidyCase& one) {
  INFO(one.grid);
  const Tidied result = tidied(lesson_of(one.grid));
  CHECK(result.bytes == lesson_of(one.tidy));
  CHECK(notes_text(result) == one.notes);
  CHECK_FALSE(result.read.diagnostics.has_errors());
  const Tidied again = tidied(result.bytes);
  CHECK(again.bytes == result.bytes);
  CHECK(again.notes.empty());
  CHECK(tidied(with_crlf(lesson_of(one.grid))).bytes == with_crlf(lesson_of(one.tidy)));
  const std::string mark = "\xEF\xBB\xBF";
  CHECK(tidied(mark + lesson_of(one.grid)).bytes == mark + lesson_of(one.tidy));
}

// All that a lesson's grids say.
std::string music_of(const ReadLesson& read) {
  std::string text;
  if (!read.lesson) return "errors";
  for (const Example& example : read.lesson->examples) text += music_text(example.music) + "\n";
  return text;
}

// The promise: the same music, no byte outside the grids touched, and nothing more to do. Goes past the check that
// `tidy` makes of its own work, so that a fault shows.
void keeps_its_promise(const std::string& bytes) {
  INFO(bytes);
  const ReadLesson before = read_lesson("a.lesson.toml", bytes, shed());
  REQUIRE(before.lesson);
  std::string after;
  std::size_t done = 0;
  for (const WrittenGrid& grid : before.grids) {
    const GridContext context{grid.neck, grid.key, grid.meter, grid.vary};
    const std::string written = bytes.substr(grid.range.begin, grid.range.end - grid.range.begin);
    const std::string set = realigned(written, context);
    REQUIRE(realigned(set, context) == set);
    after += bytes.substr(done, grid.range.begin - done) + set;
    done = grid.range.end;
  }
  after += bytes.substr(done);
  INFO(after);
  REQUIRE(music_of(read_lesson("a.lesson.toml", after, shed())) == music_of(before));
  const Tidied result = tidied(bytes);
  REQUIRE(result.bytes == after);
  REQUIRE(tidied(after).notes.empty());
}

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

// Filler put in, taken out or exchanged here and there, as long as the lesson can still be read.
std::string misaligned(fretsheaf::test::Dice& dice, std::string text) {
  for (int slips = 0, tries = 0; slips < 6 && tries < 40; ++tries) {
    const std::size_t at = static_cast<std::size_t>(dice.below(static_cast<int>(text.size())));
    std::string slipped = text;
    const char c = text[at];
    if (c != ' ' && c != '-') continue;
    switch (dice.below(3)) {
      case 0:
        slipped.erase(at, 1);
        break;
      case 1:
        slipped.insert(at, 1, dice.chance(50) ? ' ' : '-');
        break;
      default:
        slipped[at] = c == ' ' ? '-' : ' ';
    }
    if (!read_lesson("a.lesson.toml", slipped, shed()).lesson) continue;
    text = std::move(slipped);
    ++slips;
  }
  return text;
}

}  // namespace

TEST_CASE("tidy leaves a grid that is in line as it stands") {
  for (const std::string grid : {"count | 1   2   3   4   |\nA     | 5   h7  =   x   |\n",
                                 "count |: 1 & (2)  |  %  :|\nG     |--5--------|------|\nD     |-----------|\n",
                                 "count  | 1 la li 2   |\nA      | 5 7  8  9   |\nlyric  | low- tide   |\n"}) {
    check({grid, grid, ""});
  }
}

TEST_CASE("tidy puts tokens where their counts begin, in columns wide enough, with labels of one width") {
  check({"count | 1 la li 2 |\nA| 5  7 8  9 |\n", "count | 1 la li 2 |\nA     | 5 7  8  9 |\n"});
  check({"count | 1la 2 |\nA     | 5 7 9 |\n", "count | 1 la 2 |\nA     | 5 7  9 |\n"});
  check({"count |1 (2) |\nA     |5     |\ntext  |   now|\n", "count |1 (2) |\nA     |5     |\ntext  |  now |\n"});
}

TEST_CASE("tidy fills all string rows alike, with what most of them have") {
  check({"count | 1   2   3   4   |\nD     |-----5-----------|\nA     | 5          -----|\n",
         "count | 1   2   3   4   |\nD     |-----5-----------|\nA     |-5---------------|\n"});
  check({"count | 1 2 3 4 |\nD     |     5   |\nA     |-5       |\n",
         "count | 1 2 3 4 |\nD     |     5   |\nA     | 5       |\n"});
}

TEST_CASE("tidy mends lookalikes and tabs, and says so") {
  check({"count | 1 2 3 4 |\nA\t| 5   7   |\n", "count | 1 2 3 4 |\nA     | 5   7   |\n",
         "8: 1 tab\n7: columns out of line\n"});
  check({"count | 1 2 3 4 |\nA     |\t5   7   |\n", "count | 1 2 3 4 |\nA     | 5   7   |\n", "8: 1 tab\n"});
  check({"count | 1 2 3 4     |\nA     | 5   7       |\ntext  | “by and by” |\n",
         "count | 1 2 3 4     |\nA     | 5   7       |\ntext  | \"by and by\" |\n", "9: 2 curly quotes\n"});
  check({"count | 1 2 3 4 |\nA     |—5———7———|\n", "count | 1 2 3 4 |\nA     |-5---7---|\n", "8: 7 long dashes\n"});
  check({"count | 1 2 3 4 |\nA     ¦ 5   7   ¦\n", "count | 1 2 3 4 |\nA     | 5   7   |\n",
         "8: 2 strokes that are no `|`\n"});
}

TEST_CASE("tidy puts bar lines under each other where the tokens leave one way to read them") {
  check({"count | 1 2 3 4 | 1 2 3 4 |\nA     | 5   7  | 5   7   |\n",
         "count | 1 2 3 4 | 1 2 3 4 |\nA     | 5   7   | 5   7   |\n", "7: bar lines that stood apart\n"});
  // Half a beat earlier or later: either may be meant.
  const std::string unsure = lesson_of("count | 1 2 3 4 | 1&2&3&4& |\nA     | 5 7 5 7 | 5-7-9   |\n");
  const Tidied result = tidied(unsure);
  CHECK(result.bytes == unsure);
  CHECK(result.notes.empty());
  CHECK(result.read.diagnostics.has_errors());
}

TEST_CASE("tidy straightens the quotes without which a lesson is no TOML") {
  const std::string grid = "count | 1 2 3 4 |\nA     | 5   7   |\n";
  std::string curly = lesson_of(grid);
  curly.replace(curly.find("\"Low tide\""), 10, "“Low tide”");
  const Tidied result = tidied(curly);
  CHECK(result.bytes == lesson_of(grid));
  CHECK(notes_text(result) == "1: 2 curly quotes\n");
  // Where it would be a guess, nothing changes.
  for (const std::string line : {"title = “Low \"tide\"”\n", "title = “Low tide\n", "title = “Low\\ntide”\n"}) {
    const std::string lesson = line + "key = \"D dorian\"\ninstrument = \"bass\"\n";
    CHECK(tidied(lesson).bytes == lesson);
    CHECK(tidied(lesson).read.diagnostics.has_errors());
  }
}

TEST_CASE("tidy straightens a grid's three quotes where only some of them are curly") {
  const std::string grid = "count | 1 2 3 4 |\nA     | 5   7   |\n";
  for (const std::string opening : {"‘‘‘", "’’’", "'''"}) {
    for (const std::string closing : {"‘‘‘", "’’’", "'''"}) {
      CAPTURE(opening, closing);
      CHECK(tidied(heading + "tab = " + opening + "\n" + grid + closing + "\n").bytes == lesson_of(grid));
    }
  }
  // A grid has single ones, whichever were meant; an intro may have either.
  for (const std::string opening : {"“““", "”””", "„„„"}) {
    CAPTURE(opening);
    CHECK(tidied(heading + "tab = " + opening + "\n" + grid + "”””\n").bytes == lesson_of(grid));
  }
  CHECK(tidied("intro = “““\nSlowly.\n”””\n").bytes == "intro = \"\"\"\nSlowly.\n\"\"\"\n");
  // Three that are never closed are no value of two.
  const std::string open = heading + "tab = ‘‘‘\n" + grid;
  CHECK(tidied(open).bytes == open);
}

TEST_CASE("tidy leaves a grid with errors as it stands, and sets the others") {
  const std::string wrong = "\n[[example]]\ntab = '''\ncount | 1 2 3 4 5 |\nA| 5   7     |\n'''\n";
  const Tidied result = tidied(lesson_of("count | 1 la li 2 |\nA| 5  7 8  9 |\n") + wrong);
  CHECK(result.bytes == lesson_of("count | 1 la li 2 |\nA     | 5 7  8  9 |\n") + wrong);
  CHECK(result.read.diagnostics.list().size() == 1);
}

TEST_CASE("tidy puts the files of the contract and the demos to rights, and keeps what they say") {
  int lessons = 0;
  for (const std::string folder : {"/demo-lessons", "/tests/command", "/tests/fuzz/corpus/lesson"}) {
    for (const auto& entry : std::filesystem::directory_iterator(fretsheaf::test::project_folder() + folder)) {
      if (!entry.is_regular_file() || !entry.path().string().ends_with(".lesson.toml")) continue;
      const std::string bytes = bytes_of(entry.path());
      if (!read_lesson("a.lesson.toml", bytes, shed()).lesson) continue;
      keeps_its_promise(bytes);
      ++lessons;
    }
  }
  CHECK(lessons >= 8);
}

TEST_CASE("the demo lessons are tidy as they stand") {
  int lessons = 0;
  for (const auto& entry : std::filesystem::directory_iterator(fretsheaf::test::project_folder() + "/demo-lessons")) {
    if (!entry.path().string().ends_with(".lesson.toml")) continue;
    INFO(entry.path());
    const std::string bytes = bytes_of(entry.path());
    CHECK(tidied(bytes).bytes == bytes);
    ++lessons;
  }
  CHECK(lessons >= 11);
}

TEST_CASE("tidy keeps the music of random lessons, however their grids have slipped") {
  for (unsigned seed = 0; seed < 60; ++seed) {
    fretsheaf::test::Dice dice(seed);
    INFO("seed " << seed);
    const std::string text = fretsheaf::test::random_lesson(seed);
    keeps_its_promise(text);
    keeps_its_promise(misaligned(dice, text));
  }
}
