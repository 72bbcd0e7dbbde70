// Exercises and their answer keys: nothing that is hidden is in the student's files, in no format and no key.
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Console;
using command::Exit;

namespace {

using Files = std::map<std::string, std::string>;

struct Shed {
  platform::DiskSystem disk;  // for the program's own data and fonts
  platform::MemorySystem system{disk};
  Console console;

  Exit typeset(const std::string& lesson, std::vector<std::string> options) {
    system.files["quiz.lesson.toml"] = lesson;
    options.insert(options.begin(), {"typeset", "quiz.lesson.toml"});
    console = {};
    return command::run(std::move(options), system, console);
  }

  // What was written: the student's files, or the answer keys.
  Files written(bool answers) const {
    Files found;
    for (const auto& [name, bytes] : system.files) {
      const bool is_answer = name.find(".answers.") != std::string::npos;
      if (!name.ends_with(".toml") && is_answer == answers) found[name] = bytes;
    }
    return found;
  }
};

struct Pair {
  std::string name;
  std::string keys;
  std::string one;  // grids that differ only in what is hidden
  std::string other;
};

std::string lesson(const std::string& keys, const std::string& grid, const std::string& more = "") {
  return "title = \"Quiz\"\nkey = \"D dorian\"\ninstrument = \"bass\"\nstaves = [\"slash\", \"notes\", \"tab\"]\n"
         "[[example]]\n" +
         keys + "\ntab = '''\n" + grid + "'''\n" + more;
}

const std::string all_labels = "labels = [\"notes\", \"chord-degrees\", \"key-degrees\", \"fingers\", \"counts\"]";

const std::vector<Pair> pairs = {
    {"frets", "hide = [\"frets\"]\n" + all_labels,
     "count  | 1    2  &     3  (4)  | 1   2  &  3   4    |\n"
     "chord  | Dm7                   | G7                 |\n"
     "mark   | mf                    | f                  |\n"
     "finger | 1    3  1             | 1                  |\n"
     "D      |                       |        x           |\n"
     "A      | 5    8 h10>           | 10        8_ (7)   |\n",
     "count | 1    2  &    3  (4)  | 1   2  &  3     4     |\n"
     "chord | Dm7                  | G7                    |\n"
     "mark  | mf                   | f                     |\n"
     "G     |                      | 9                     |\n"
     "D     |                      |                       |\n"
     "A     |      6 /8>           |        x  7^1_        |\n"
     "E     | 10~                  |                (11)   |\n"},
    {"rhythm", "hide = [\"rhythm\"]\nlabels = [\"notes\", \"key-degrees\", \"fingers\", \"counts\"]",
     "count | 4  | 1    2  3   (4)  | 1   &  2  (3)  &  | 1    2  3   4  |\n"
     "chord |    | Dm7              | G7                | Dm7     G7     |\n"
     "mark  |    | mf               |                   | f              |\n"
     "text  |    | go               |                   |                |\n"
     "D     |    |                  |                5  |                |\n"
     "A     |    | 5    8  10       |     8  7          | 5    5  7   8  |\n"
     "E     | 8  |                  |                   |                |\n",
     "count | 4  &  | 1    la  li  4  | 1   2  3  4  | 1    &  2  &  (3)  |\n"
     "chord |       | Dm7             | G7           | Dm7           G7   |\n"
     "mark  |       | mf              |              | f                  |\n"
     "text  |       | go              |              |                    |\n"
     "D     |       |                 |        5     |                    |\n"
     "A     |       | 5    8   10     | 8   7        | 5    5  7  8       |\n"
     "E     |    8  |                 |              |                    |\n"},
    {"chords", "hide = [\"chords\"]\n" + all_labels,
     "count | 1    2  3   4   | 1    2  3     4  |\n"
     "chord | Dm7     E7      | Am7     N.C.     |\n"
     "A     | 5    8  11  12  | 12   9  6     5  |\n",
     "count | 1    2  3   4   | 1   2  3       4  |\n"
     "chord | Bb7             | Fm     Abmaj7     |\n"
     "A     | 5    8  11  12  | 12  9  6       5  |\n"},
    {"labels", "hide = [\"labels\"]",
     "count  | 1    2  3   4  |\n"
     "chord  | Dm7            |\n"
     "finger | 1    4  1      |\n"
     "A      | 5    8  10  x  |\n",
     "count  | 1    2  3   4  |\n"
     "chord  | Dm7            |\n"
     "finger | 2       4      |\n"
     "A      | 5    8  10  x  |\n"},
    {"frets, with a picture of the notes", "hide = [\"frets\"]\nneck = { of = \"notes\" }",
     "count | 1  2  3  4   |\nA     | 5  7  8  10  |\n", "count | 1  2  3  4  |\nD     | 0  2  2  3  |\n"},
    {"frets, with a part of the neck",
     "hide = [\"frets\"]\nneck = { of = \"notes\", frets = \"2-9\", labels = \"fingers\" }",
     "count | 1  2  3  4  |\nA     | 5  7  8  9  |\n", "count | 1  2  3  4  |\nD     | 3  2  2  3  |\n"},
    {"frets, with a picture of the key", "hide = [\"frets\"]\nneck = { of = \"key\" }",
     "count | 1  2  3  4   |\nA     | 5  7  8  10  |\n", "count | 1  2  3  4  |\nD     | 0  2  2  3  |\n"},
    {"labels, with a picture of the notes", "hide = [\"labels\"]\nneck = { of = \"notes\", labels = \"fingers\" }",
     "count  | 1  2  3  4   |\nfinger | 1  3     4   |\nA      | 5  7  8  10  |\n",
     "count  | 1  2  3  4   |\nfinger | 1  2  3      |\nA      | 5  7  8  10  |\n"},
    {"all", "hide = [\"frets\", \"rhythm\", \"labels\", \"chords\"]\n" + all_labels,
     "count | 1    2  3   4   | 1    2  3  4  |\n"
     "chord | Dm7     E7      | Am7           |\n"
     "A     | 5    8  11  12  | 12   9  6  5  |\n",
     "count | 1  &  2  &  | 1  la  li  3  4  |\n"
     "A     | 6  7  5  8  | 8  6   5   7     |\n"},
};

const std::vector<std::string> everything = {"--as", "pdf,svg,musicxml,mxl", "--key", "all", "--answers"};

}  // namespace

TEST_CASE("two lessons that differ only in what is hidden give the same student files, byte for byte, in twelve keys") {
  for (const Pair& pair : pairs) {
    CAPTURE(pair.name);
    Shed one;
    Shed other;
    const Exit first = one.typeset(lesson(pair.keys, pair.one), everything);
    INFO(one.console.errors);
    REQUIRE(first == Exit::done);
    const Exit second = other.typeset(lesson(pair.keys, pair.other), everything);
    INFO(other.console.errors);
    REQUIRE(second == Exit::done);

    CHECK(one.written(false).size() == 24);  // a PDF and a page of SVG in each key, and no MusicXML
    CHECK(one.written(true).size() == 48);
    for (const auto& [name, bytes] : one.written(false)) {
      CAPTURE(name);
      CHECK((other.written(false).at(name) == bytes));
    }
    // What the answer keys show is what differs.
    for (const auto& [name, bytes] : one.written(true)) {
      const bool is_drawn = name.ends_with(".svg") || name.ends_with(".pdf");
      // Labels are drawn alone, and written fingers that do not fit another key are left out there.
      const bool is_own = name.find(".d-dorian.") != std::string::npos;
      const bool plays_the_same = pair.name.starts_with("labels") && !(is_drawn && is_own);
      CAPTURE(name);
      if (!plays_the_same) CHECK((other.written(true).at(name) != bytes));
    }
  }
}

TEST_CASE("the chords of a form are hidden where the example stands in it, and left elsewhere") {
  for (const std::string more : {" }", ", write-out = true }"}) {
    CAPTURE(more);
    const auto keys = [&](const std::string& marked) {
      return "hide = [\"chords\"]\nform = { bars = \"i7 " + marked + " % IV7\", here = \"2-3\"" + more;
    };
    const std::string grid = "count | 1 2 3 4 | 1 2 3 4 |\nA     | 5 7 5 8 | 5 7 5 8 |\n";
    Shed one;
    Shed other;
    REQUIRE(one.typeset(lesson(keys("IV7 v7"), grid), everything) == Exit::done);
    REQUIRE(other.typeset(lesson(keys("v7,IV7 %"), grid), everything) == Exit::done);
    CHECK((one.written(false) == other.written(false)));
    CHECK((one.written(true) != other.written(true)));
  }
}

TEST_CASE("a variation does not give away what its source hides") {
  const std::string varied = "[[example]]\nvary = 1\nlabels = [\"notes\"]\ntab = '''\ncount | 1 & 2 & |\n'''\n";
  const std::string keys = "hide = [\"frets\", \"chords\"]";
  Shed one;
  Shed other;
  REQUIRE(one.typeset(lesson(keys, "count | 1 2 3 4 |\nchord | Dm7     |\nA     | 5 7 5 8 |\n", varied), everything) ==
          Exit::done);
  REQUIRE(other.typeset(lesson(keys, "count | 1 2 3 4 |\nchord | G7      |\nA     | 7 5 8 5 |\n", varied),
                        everything) == Exit::done);
  CHECK((one.written(false) == other.written(false)));
  CHECK((one.written(true) != other.written(true)));
}

TEST_CASE("MusicXML of an exercise is made for the answer key alone, and this is said") {
  const std::string open = "[[example]]\ntab = '''\ncount | 1 2 3 4 |\nA     | 5 7 5 8 |\n'''\n";
  const std::string grid = "count | 1 2 3 4 |\nA     | 7 9 7 9 |\n";
  Shed shed;
  CHECK(shed.typeset(lesson("hide = [\"frets\"]", grid, open), {"--as", "musicxml"}) == Exit::done);
  CHECK(shed.console.errors ==
        "quiz.lesson.toml:6:8: warning: MusicXML would give away what 'hide' hides, so this example is not in it\n"
        "  hide = [\"frets\"]\n"
        "         ^^^^^^^^^\n"
        "help: --answers puts it into the answer key's\n");
  REQUIRE(shed.written(false).size() == 1);
  const std::string document = shed.written(false).at("quiz.d-dorian.musicxml");
  CHECK(document.find("<fret>8</fret>") != std::string::npos);
  CHECK(document.find("<fret>9</fret>") == std::string::npos);

  Shed alone;
  CHECK(alone.typeset(lesson("hide = [\"frets\"]", grid), {"--as", "musicxml,mxl"}) == Exit::done);
  CHECK(alone.written(false).empty());
}

TEST_CASE("a lesson of exercises alone says once that it makes no MusicXML, and how to have that of the answer key") {
  const std::string none =
      "quiz.lesson.toml: no MusicXML is made, for every example hides something; --answers makes that of the answer "
      "key\n";
  const std::string quiz = lesson("hide = [\"frets\"]", "count | 1 2 3 4 |\nA     | 7 9 7 9 |\n");
  Shed shed;
  CHECK(shed.typeset(quiz, {"--as", "pdf,musicxml,mxl", "--key", "E", "--key", "G"}) == Exit::done);
  CHECK(shed.console.errors ==
        "quiz.lesson.toml:6:8: warning: MusicXML would give away what 'hide' hides, so this example is not in it\n"
        "  hide = [\"frets\"]\n"
        "         ^^^^^^^^^\n"
        "help: --answers puts it into the answer key's\n" +
            none);
  CHECK(shed.typeset(quiz, {"--as", "musicxml", "--answers"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  CHECK(shed.written(true).size() == 1);
  CHECK(shed.typeset(quiz, {"--as", "pdf"}) == Exit::done);
  CHECK(shed.console.errors.empty());
}

TEST_CASE("a lesson of blank bars or prose alone says that it makes no MusicXML, with answers or without") {
  const std::string none = "quiz.lesson.toml: no MusicXML is made, for there is no music in this lesson\n";
  const std::string top = "title = \"Quiz\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
  const std::string blank = top + "[[example]]\nblank-bars = 4\n";
  const std::string prose = top + "intro = \"Bring a pencil.\"\n";
  Shed shed;
  for (const std::string& music_less : {blank, prose}) {
    CHECK(shed.typeset(music_less, {"--as", "musicxml,mxl"}) == Exit::done);
    CHECK(shed.console.errors.ends_with(none));
    CHECK(shed.written(false).empty());
  }
  CHECK(shed.typeset(blank, {"--as", "musicxml", "--answers"}) == Exit::done);
  CHECK(shed.console.errors.ends_with(none));
  CHECK(shed.written(false).empty());
  CHECK(shed.written(true).empty());
}

TEST_CASE("an answer key is asked of a lesson that hides nothing") {
  Shed shed;
  CHECK(shed.typeset(lesson("", "count | 1 2 3 4 |\nA     | 7 9 7 9 |\n"), {"--answers"}) == Exit::done);
  CHECK(shed.console.errors ==
        "quiz.lesson.toml:1:1: warning: this lesson hides nothing, so it has no answer key\n"
        "  title = \"Quiz\"\n"
        "  ^\n"
        "help: write hide = [\"frets\"] in an example, or leave out --answers\n");
  CHECK(shed.written(true).empty());
  CHECK(shed.written(false).size() == 1);
}

TEST_CASE("an answer key's name ends in .answers, after the instrument, the capo and the template") {
  Shed shed;
  const std::string quiz = lesson("hide = [\"frets\"]", "count | 1 2 3 4 |\nA     | 2 0 2 0 |\n");
  CHECK(shed.typeset(quiz, {"--answers", "--capo", "1", "--template", "music-stand", "--as", "pdf,svg,musicxml"}) ==
        Exit::done);
  std::string names;
  for (const auto& [name, bytes] : shed.written(true)) names += name + "\n";
  CHECK(names ==
        "quiz.e-flat-dorian.capo-1.music-stand.answers.musicxml\n"
        "quiz.e-flat-dorian.capo-1.music-stand.answers.p1.svg\n"
        "quiz.e-flat-dorian.capo-1.music-stand.answers.pdf\n");
}
