// transpose: a lesson's file in another key, and what is said of the move.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Console;
using command::Exit;

namespace {

const std::string good =
    "# A remark that stays.\n"
    "key        = \"D dorian\"   # and one beside the key\n"
    "also-in    = [\"E dorian\", \"A dorian\"]\n"
    "title      = \"Two notes over {{chord Dm7}}\"\n"
    "instrument = \"bass\"\n"
    "\n"
    "[[example]]\n"
    "form   = { bars = \"Dm7,G7 i7 | Am7\" }\n"
    "neck   = { of = \"chord Dm7\", frets = \"3-8\" }\n"
    "shapes = [\"Dm7 x535\", \"G7 3x0x\", \"V7\"]\n"
    "tab = '''\n"
    "count  | 1   2   3   4   | % | 1e&a (2) 3   4    ||\n"
    "chord  | Dm7             |   | G7/B     Bb°7     |\n"
    "D      |         7   5   |   |   9x              |\n"
    "A      | 5   h7          |   | 8        4   =    |\n"
    "finger | 1   3   3   1   |   |                   |\n"
    "spell  |                 |   |          Db       |\n"
    "'''\n";

struct Shed {
  platform::MemorySystem system;
  Console console;

  explicit Shed(const std::string& lesson = good) { system.files["a.lesson.toml"] = lesson; }

  Exit run(std::vector<std::string> words) {
    console = {};
    words.insert(words.begin(), {"transpose", "a.lesson.toml"});
    return command::run(std::move(words), system, console);
  }
};

}  // namespace

TEST_CASE("a lesson's file in another key: only what must change does, and columns have room") {
  Shed shed;
  REQUIRE(shed.run({"--key", "E", "-o", "b.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors ==
        "from D dorian to E dorian\nexample 1: up 2 semitones\n"
        "  A7: the shape cannot move, one is worked out afresh\n");
  CHECK(shed.system.files.at("b.lesson.toml") ==
        "# A remark that stays.\n"
        "key        = \"E dorian\"   # and one beside the key\n"
        "also-in    = [\"D dorian\", \"A dorian\"]\n"
        "title      = \"Two notes over {{chord Em7}}\"\n"
        "instrument = \"bass\"\n"
        "\n"
        "[[example]]\n"
        "form   = { bars = \"Em7,A7 i7 | Bm7\" }\n"
        "neck   = { of = \"chord Em7\", frets = \"5-10\" }\n"
        "shapes = [\"Em7 x757\", \"A7\", \"V7\"]\n"
        "tab = '''\n"
        "count  | 1   2   3   4   | % | 1e&  a (2) 3   4    ||\n"
        "chord  | Em7             |   | A7/C#      C°7      |\n"
        "D      |         9   7   |   |   11 x              |\n"
        "A      | 7   h9          |   | 10         6   =    |\n"
        "finger | 1   3   3   1   |   |                     |\n"
        "spell  |                 |   |            Eb       |\n"
        "'''\n");
}

TEST_CASE("without -o the lesson goes to standard output, the report never does") {
  Shed shed;
  REQUIRE(shed.run({"--key", "C dorian"}) == Exit::done);
  CHECK(shed.system.standard_output.find("key        = \"C dorian\"") != std::string::npos);
  CHECK(shed.console.out.empty());
  CHECK(shed.console.errors.find("example 1: down 2 semitones\n") != std::string::npos);
  CHECK(shed.system.files.size() == 1);
}

TEST_CASE("a move into the lesson's own key changes no byte") {
  Shed shed;
  REQUIRE(shed.run({"--key", "D", "-o", "b.lesson.toml"}) == Exit::done);
  CHECK(shed.system.files.at("b.lesson.toml") == good);
  CHECK(shed.console.errors == "from D dorian to D dorian\nexample 1: stays where it is\n");
}

TEST_CASE("the report says what a plain shift does not do, as text and as a document") {
  Shed shed(
      "title = \"Two notes\"\nkey = \"C major\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
      "count  | 1   2   |\nA      | 3   5   |\nfinger | 1   3   |\n'''\n");
  REQUIRE(shed.run({"--key", "Ab", "-o", "b.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors ==
        "a.lesson.toml:8:10: warning: in Ab major the written fingers of bar 1 do not fit the new places, and are left "
        "out\n"
        "  finger | 1   3   |\n"
        "           ^\n"
        "from C major to Ab major\nexample 1: down 4 semitones\n  bar 1: A 3 to E 4\n");
  // The string that the grid did not have has a row now.
  CHECK(shed.system.files.at("b.lesson.toml") ==
        "title = \"Two notes\"\nkey = \"Ab major\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
        "count  | 1   2   |\nA      |     1   |\nE      | 4       |\nfinger |         |\n'''\n");

  REQUIRE(shed.run({"--key", "Ab", "-o", "c.lesson.toml", "--json"}) == Exit::done);
  const auto document = nlohmann::json::parse(shed.console.out);
  CHECK(document ==
        nlohmann::json::parse(R"({"version": 1, "from": "C major", "to": "Ab major", "examples": [{"example": 1,
          "semitones": -4, "moved": [{"bar": 1, "at": "0", "from": {"string": 3, "fret": 3},
          "to": {"string": 4, "fret": 4}}], "without_fingers": [1], "shapes_afresh": []}]})"));
}

TEST_CASE("a key that comes from a sheaf.toml is written into the lesson, line ends as the file has them") {
  Shed shed(
      "title = \"Two notes\"\r\ninstrument = \"bass\"\r\n[[example]]\r\ntab = '''\r\n"
      "count | 1   2   |\r\nA     | 9   7   |\r\n'''\r\n");
  shed.system.files["sheaf.toml"] = "[defaults]\nkey = \"D dorian\"\nintro = \"Over {{chord Dm7}}.\"\n";
  REQUIRE(shed.run({"--key", "E", "-o", "b.lesson.toml"}) == Exit::done);
  CHECK(shed.system.files.at("b.lesson.toml") ==
        "title = \"Two notes\"\r\nkey = \"E dorian\"\r\ninstrument = \"bass\"\r\n[[example]]\r\ntab = '''\r\n"
        "count | 1   2   |\r\nA     | 11  9   |\r\n'''\r\n");
}

TEST_CASE("what transpose refuses") {
  Shed shed;
  const std::string help = "help: fretsheaf --help lists the verbs and their options\n";
  const auto said = [&](std::vector<std::string> words, Exit exit) {
    CHECK(shed.run(std::move(words)) == exit);
    return shed.console.errors;
  };
  CHECK(said({}, Exit::request_wrong) == "fretsheaf: error: transpose to which key? name it with --key\n" + help);
  CHECK(said({"--key", "all"}, Exit::request_wrong) ==
        "fretsheaf: error: --key all: a lesson file has one key: name it\n");
  CHECK(said({"--key", "E minor"}, Exit::request_wrong) ==
        "fretsheaf: error: --key E minor: this lesson is in D dorian, and a move keeps the mode: in minor it would be "
        "another tune; write \"E dorian\"\n");
  CHECK(said({"--key", "E", "--json"}, Exit::request_wrong) ==
        "fretsheaf: error: --json: the report goes to standard output, and so the lesson needs a file: name it with "
        "-o\n");
  CHECK(said({"--key", "E", "-o", "a.lesson.toml"}, Exit::unreadable) ==
        "fretsheaf: error: a.lesson.toml: is there already, and is not overwritten; choose another name\n");
  CHECK(shed.system.files.at("a.lesson.toml") == good);
  CHECK(shed.system.files.size() == 1);
}
