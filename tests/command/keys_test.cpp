// typeset in other keys, on other instruments, under a capo: the names of outputs, what is refused, and the heading.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Console;
using command::Exit;

namespace {

const std::string good =
    "title = \"Two notes\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
    "count | 1   2   3   4   |\nA     | 5       5       |\n'''\n";

struct Shed {
  platform::DiskSystem disk;  // for the program's own data and fonts
  platform::MemorySystem system{disk};
  Console console;

  explicit Shed(const std::string& lesson = good) { system.files["a.lesson.toml"] = lesson; }

  Exit run(std::vector<std::string> words) {
    console = {};
    words.insert(words.begin(), {"typeset", "a.lesson.toml"});
    return command::run(std::move(words), system, console);
  }

  // The names of all that was written.
  std::string names() const {
    std::string list;
    for (const auto& [name, bytes] : system.files) {
      if (name != "a.lesson.toml") list += (list.empty() ? "" : " ") + name;
    }
    return list;
  }
};

}  // namespace

TEST_CASE("a lesson is made in every key that --key names, and a tonic alone keeps the mode") {
  Shed shed;
  CHECK(shed.run({"--key", "E", "--key", "Bb dorian", "--as", "musicxml"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  CHECK(shed.names() == "a.b-flat-dorian.musicxml a.e-dorian.musicxml");
}

TEST_CASE("the lesson's own key may be named, and makes what no key makes") {
  Shed shed;
  CHECK(shed.run({"--as", "musicxml"}) == Exit::done);
  const std::string own = shed.system.files.at("a.d-dorian.musicxml");
  CHECK(shed.run({"--key", "D", "--as", "musicxml"}) == Exit::done);
  CHECK(shed.names() == "a.d-dorian.musicxml");
  CHECK(shed.system.files.at("a.d-dorian.musicxml") == own);
}

TEST_CASE("all are the twelve keys with the fewest signs, flats at six") {
  Shed shed(
      "title = \"Two notes\"\nkey = \"C major\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
      "count | 1   2   3   4   |\nA     | 3       5       |\n'''\n");
  CHECK(shed.run({"--key", "all", "--as", "musicxml"}) == Exit::done);
  CHECK(shed.names() ==
        "a.a-flat-major.musicxml a.a-major.musicxml a.b-flat-major.musicxml a.b-major.musicxml a.c-major.musicxml "
        "a.d-flat-major.musicxml a.d-major.musicxml a.e-flat-major.musicxml a.e-major.musicxml a.f-major.musicxml "
        "a.g-flat-major.musicxml a.g-major.musicxml");
}

TEST_CASE("the names of outputs say instrument, capo and template where the command line gave them") {
  Shed shed;
  CHECK(shed.run({"--key", "E", "--instrument", "guitar", "--capo", "2", "--template", "music-stand", "--as",
                  "pdf,svg,musicxml"}) == Exit::done);
  const std::string stem = "a.e-dorian.guitar.capo-2.music-stand";
  CHECK(shed.names() == stem + ".musicxml " + stem + ".p1.svg " + stem + ".pdf");
}

TEST_CASE("a capo leaves the shapes and moves what sounds, and both keys are named") {
  Shed shed;
  CHECK(shed.run({"--capo", "2", "--as", "musicxml"}) == Exit::done);
  REQUIRE(shed.names() == "a.e-dorian.capo-2.musicxml");
  const std::string& document = shed.system.files.at("a.e-dorian.capo-2.musicxml");
  CHECK(document.find("<fret>5</fret>") != std::string::npos);
  CHECK(document.find("<step>E</step>") != std::string::npos);
}

TEST_CASE("a lesson with forced spellings under a capo: they are called as they sound, and none is refused") {
  Shed shed(
      "title = \"Two notes\"\nkey = \"C major\"\ninstrument = \"guitar\"\n[[example]]\ntab = '''\n"
      "count | 1   2   3   4   |\nB     | 2       =       |\nspell | Db              |\n'''\n");
  for (const char* fret : {"1", "2", "7"}) {
    CAPTURE(fret);
    CHECK(shed.run({"--capo", fret, "--as", "musicxml"}) == Exit::done);
    CHECK(shed.console.errors.empty());
  }
  CHECK(shed.names() == "a.d-flat-major.capo-1.musicxml a.d-major.capo-2.musicxml a.g-major.capo-7.musicxml");
  const std::string& document = shed.system.files.at("a.d-major.capo-2.musicxml");
  CHECK(document.find("<step>E</step>") != std::string::npos);
  CHECK(document.find("<alter>-1</alter>") != std::string::npos);
}

TEST_CASE("what a lesson cannot be asked for is refused before anything is written") {
  Shed shed;
  struct Case {
    std::vector<std::string> words;
    std::string said;
  };
  const std::vector<Case> cases = {
      {{"--key", "H"}, "--key H: 'H' is no key; did you mean 'B dorian'?"},
      {{"--key", "al"}, "--key al: 'al' is no key; did you mean 'all'?"},
      {{"--key", "E dorain"}, "--key E dorain: 'dorain' is no mode; did you mean 'E dorian'?"},
      {{"--key", "E blue"}, "--key E blue: 'blue' is no mode; write a tonic and a mode, such as \"D dorian\""},
      {{"--key", "D minor"},
       "--key D minor: this lesson is in D dorian, and a move keeps the mode: in minor it would be another tune; write "
       "\"D dorian\""},
      {{"--key", "Fb"},
       "--key Fb: 'Fb' would have 10 flats, and a signature has at most seven; write \"E dorian\", which sounds the "
       "same"},
      {{"--key", "E", "--key", "E dorian"},
       "--key E and --key E dorian would both be written to 'a.e-dorian.…'; name each key once"},
      {{"--key", "E", "--key", "E"}, "--key E twice would both be written to 'a.e-dorian.…'; name each key once"},
      {{"--key", "all", "--key", "G"},
       "--key all and --key G would both be written to 'a.g-dorian.…'; name each key once"},
      {{"--instrument", "ukelele"}, "--instrument ukelele: there is no such instrument; did you mean 'ukulele'?"},
      {{"--capo", "two"}, "--capo two: write the fret where the capo is, as in --capo 2"},
      {{"--capo", "-1"}, "--capo -1: write the fret where the capo is, as in --capo 2"},
      {{"--capo", "24"}, "--capo 24: a capo at fret 24 leaves nothing of a neck with 24 frets"},
      {{"--capo", "20"}, "--capo 20: a capo at fret 20 leaves 4 frets, and bar 1 of example 1 goes higher"},
      {{"--key", "all", "--to", "-"}, "--to -: standard output takes one file, and this makes 12"},
  };
  for (const Case& one : cases) {
    CAPTURE(one.said);
    CHECK(shed.run(one.words) == Exit::request_wrong);
    CHECK(shed.console.errors == "fretsheaf: error: " + one.said + "\n");
    CHECK(shed.names().empty());
  }
}

TEST_CASE("a command line that is wrong for one lesson writes nothing for the others") {
  Shed shed;
  shed.system.files["b.lesson.toml"] =
      "title = \"Two notes\"\nkey = \"D minor\"\ninstrument = \"bass\"\n[[example]]\ntab = '''\n"
      "count | 1   2   3   4   |\nA     | 5       5       |\n'''\n";
  CHECK(shed.run({"b.lesson.toml", "--key", "E dorian"}) == Exit::request_wrong);
  CHECK(shed.names() == "b.lesson.toml");
}

TEST_CASE("a lesson in many keys is warned of once") {
  std::string uneven = good;
  uneven.insert(uneven.find("tab = "), "tempo = { from = 60, to = 100, step = 12 }\n");
  Shed shed(uneven);
  CHECK(shed.run({"--key", "E", "--key", "F", "--as", "pdf"}) == Exit::done);
  const std::string warning = "a.lesson.toml:5:39: warning: steps of 12 from 60 do not meet 100";
  const auto first = shed.console.errors.find(warning);
  REQUIRE(first != std::string::npos);
  CHECK(shed.console.errors.find(warning, first + 1) == std::string::npos);
}

TEST_CASE("a key that a lesson cannot reach is an error at its note, and the other keys are made") {
  // Four strings a fifth apart from the lowest to the highest place: there is room for no move at all.
  Shed shed(
      "title = \"Two notes\"\nkey = \"E major\"\ninstrument = \"mandolin\"\n[[example]]\ntab = '''\n"
      "count | 1   2   3   4   |\nE     |         20      |\nG     | 0               |\n'''\n");
  CHECK(shed.run({"--key", "F", "--key", "E", "--as", "musicxml"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors ==
        "a.lesson.toml:7:17: error: in F major this note of bar 1 would be Db7, and the neck's highest note is C7\n"
        "  E     |         20      |\n"
        "                  ^^\n"
        "help: leave this key out, or write the example where it has more room to move\n");
  CHECK(shed.names() == "a.e-major.musicxml");
}
