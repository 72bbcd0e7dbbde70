// `say`: a lesson in words.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Exit;

namespace {

struct Shed {
  platform::DiskSystem disk;
  platform::MemorySystem system{disk};
  command::Console console;

  Exit run(std::vector<std::string> words) {
    console = {};
    return command::run(std::move(words), system, console);
  }
};

std::string lesson(const std::string& more, const std::string& grid) {
  return "title = \"Two \\\\<notes> & a rest\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n" + more + "tab = '''\n" +
         grid + "'''\n";
}

const std::string good = lesson("[[example]]\n", "count | 1   2   (3)     |\nA     | 5   7           |\n");

const std::string said =
    "# Two <notes> & a rest\n\nKey: D Dorian.\n\nMeter: 4/4.\n\nTuning: E A D G.\n\n## Example 1\n\n"
    "Meter 4/4, 4 beats a bar, in quarter notes.\n\n"
    "Bar 1.\nBeat 1: A string, 5th fret, 1 beat.\nBeat 2: A string, 7th fret, 1 beat.\nBeat 3: rest, 2 beats.\n\n"
    "Warm up first and rest often. If it hurts, stop and see a health professional. Protect your hearing.\n";

}  // namespace

TEST_CASE("say tells a lesson on standard output, and writes nothing") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  CHECK(shed.run({"say", "a.lesson.toml"}) == Exit::done);
  CHECK(shed.console.out == said);
  CHECK(shed.console.errors == "");
  CHECK(shed.system.files.size() == 1);
  shed.system.standard_input = good;
  CHECK(shed.run({"say", "-", "--as", "text"}) == Exit::done);
  CHECK(shed.console.out == said);
}

TEST_CASE("say tells a lesson in another key") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  CHECK(shed.run({"say", "a.lesson.toml", "--key", "E"}) == Exit::done);
  CHECK(shed.console.out.find("Key: E Dorian.\n") != std::string::npos);
  CHECK(shed.console.out.find("Beat 2: A string, 9th fret, 1 beat.\n") != std::string::npos);
}

TEST_CASE("say --as html is a document without style, its texts escaped") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  CHECK(shed.run({"say", "a.lesson.toml", "--as", "html"}) == Exit::done);
  CHECK(shed.console.out ==
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<title>Two &lt;notes&gt; &amp; a rest</title>\n</head>\n<body>\n<main>\n"
        "<h1>Two &lt;notes&gt; &amp; a rest</h1>\n<p>Key: D Dorian.</p>\n<p>Meter: 4/4.</p>\n"
        "<p>Tuning: E A D G.</p>\n<h2>Example 1</h2>\n<p>Meter 4/4, 4 beats a bar, in quarter notes.</p>\n"
        "<p>Bar 1.<br>\nBeat 1: A string, 5th fret, 1 beat.<br>\nBeat 2: A string, 7th fret, 1 beat.<br>\n"
        "Beat 3: rest, 2 beats.</p>\n"
        "<p>Warm up first and rest often. If it hurts, stop and see a health professional. Protect your "
        "hearing.</p>\n</main>\n</body>\n</html>\n");
}

TEST_CASE("what say does not understand is said") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  const std::string help = "help: fretsheaf --help lists the verbs and their options\n";
  struct Case {
    std::vector<std::string> words;
    Exit exit;
    std::string said;
  };
  const std::vector<Case> cases = {
      {{"say"}, Exit::request_wrong, "fretsheaf: error: say which lesson? name its file\n" + help},
      {{"sai", "a.lesson.toml"},
       Exit::request_wrong,
       "fretsheaf: error: there is no verb 'sai'; did you mean 'say'?\n" + help},
      {{"say", "a.lesson.toml", "b.lesson.toml"},
       Exit::request_wrong,
       "fretsheaf: error: 'b.lesson.toml' is one word too many for say\n" + help},
      {{"say", "a.lesson.toml", "--as", "pdf"},
       Exit::request_wrong,
       "fretsheaf: error: --as pdf: a lesson is said as text or as html\n"},
      {{"say", "a.lesson.toml", "--answer"},
       Exit::request_wrong,
       "fretsheaf: error: say has no option '--answer'; did you mean '--answers'?\n" + help},
      {{"say", "a.lesson.toml", "--key", "all"},
       Exit::request_wrong,
       "fretsheaf: error: --key all: a lesson is said in one key: name it\n"},
      {{"say", "gone.lesson.toml"},
       Exit::unreadable,
       "fretsheaf: error: gone.lesson.toml: is not there; there is a.lesson.toml\n"},
  };
  for (const Case& one : cases) {
    CHECK(shed.run(one.words) == one.exit);
    CHECK(shed.console.errors == one.said);
    CHECK(shed.console.out.empty());
  }
}

TEST_CASE("a lesson with errors is not said, nor one that a key does not reach") {
  Shed shed;
  shed.system.files["a.lesson.toml"] =
      lesson("[[example]]\n", "count | 1   2   (3)     |\nA     | 5  7            |\n");
  CHECK(shed.run({"say", "a.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.console.out.empty());
  CHECK(shed.console.errors ==
        "a.lesson.toml:7:12: error: `7` stands under no count, between `1` and `2`\n"
        "  A     | 5  7            |\n"
        "             ^\n"
        "help: move it under one of them, or write its count\n");
  shed.system.files["low.lesson.toml"] =
      lesson("frets = 3\n[[example]]\n", "count | 1 2     |\nE     | 0       |\nG     |   3     |\n");
  CHECK(shed.run({"say", "low.lesson.toml", "--key", "E"}) == Exit::lesson_wrong);
  CHECK(shed.console.out.empty());
  CHECK_FALSE(shed.console.errors.empty());
}

namespace {

// Two grids that differ only in what is hidden.
struct Pair {
  std::string keys;
  std::string one;
  std::string other;
  std::string answer;  // told of the first with --answers alone
};

}  // namespace

TEST_CASE("what an exercise hides is told with --answers alone, and no word of the student's copy depends on it") {
  const std::vector<Pair> pairs = {
      {"hide = [\"frets\"]\nlabels = [\"notes\", \"chord-degrees\"]\nneck = { of = \"notes\", frets = \"0-9\" }\n",
       "count | 1  2 3 4 | 1  2 3 4 |\nchord | Dm7      | G7       |\nA     | 5  7 5 3 | 5  7 5 3 |\n",
       "count | 1  2 3 4 | 1  2 3 4 |\nchord | Dm7      | G7       |\nA     | 5  7 5 3 | 2  3 5 2 |\n", "7th fret"},
      {"hide = [\"rhythm\"]\n", "count | 1  2 & 4 | 1  2 & 4 |\nA     | 5  7 5 3 | 5  7 5 3 |\n",
       "count | 1  3 & 4 | 1  2 3 4 |\nA     | 5  7 5 3 | 5  7 5 3 |\n", "half a beat"},
      {"hide = [\"labels\"]\nlabels = [\"fingers\", \"chord-degrees\"]\n",
       "count  | 1  2 3 4 |\nchord  | Dm7      |\nfinger | 1  3 1 1 |\nA      | 5  7 5 3 |\n",
       "count  | 1  2 3 4 |\nchord  | Dm7      |\nfinger | 2  4 2 1 |\nA      | 5  7 5 3 |\n", "finger 3"},
      {"hide = [\"chords\"]\nlabels = [\"chord-degrees\"]\n",
       "count | 1  2 3 4 |\nchord | Dm7      |\nA     | 5  7 5 3 |\n",
       "count | 1  2 3 4 |\nchord | F        |\nA     | 5  7 5 3 |\n", "chord D minor 7"},
  };
  Shed shed;
  for (const Pair& pair : pairs) {
    CAPTURE(pair.keys);
    for (const char* as : {"text", "html"}) {
      shed.system.files["a.lesson.toml"] = lesson("[[example]]\n" + pair.keys, pair.one);
      REQUIRE(shed.run({"say", "a.lesson.toml", "--as", as}) == Exit::done);
      const std::string one = shed.console.out;
      CHECK(one.find(pair.answer) == std::string::npos);
      REQUIRE(shed.run({"say", "a.lesson.toml", "--as", as, "--answers"}) == Exit::done);
      CHECK(shed.console.out.find(pair.answer) != std::string::npos);
      CHECK(shed.console.out.find("Answer key.") != std::string::npos);
      const std::string answers = shed.console.out;
      shed.system.files["a.lesson.toml"] = lesson("[[example]]\n" + pair.keys, pair.other);
      REQUIRE(shed.run({"say", "a.lesson.toml", "--as", as}) == Exit::done);
      CHECK(shed.console.out == one);
      REQUIRE(shed.run({"say", "a.lesson.toml", "--as", as, "--answers"}) == Exit::done);
      CHECK(shed.console.out != answers);
    }
  }
}

TEST_CASE("say --answers warns of a lesson that hides nothing, and tells it") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  CHECK(shed.run({"say", "a.lesson.toml", "--answers"}) == Exit::done);
  CHECK(shed.console.errors ==
        "a.lesson.toml:1:1: warning: this lesson hides nothing, so it has no answer key\n"
        "  title = \"Two \\\\<notes> & a rest\"\n"
        "  ^\n"
        "help: write hide = [\"frets\"] in an example, or leave out --answers\n");
  CHECK(shed.console.out.find("Bar 1.") != std::string::npos);
  CHECK(shed.console.out.find("Answer key") == std::string::npos);
}
