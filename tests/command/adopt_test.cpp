// adopt: a lesson's file from a score, and where it goes.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Console;
using command::Exit;

namespace {

const std::string score =
    "<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\"><part-name>Ukulele</part-name></score-part>"
    "</part-list><part id=\"P1\"><measure number=\"1\"><attributes><divisions>1</divisions><key><fifths>1</fifths>"
    "<mode>major</mode></key><time><beats>2</beats><beat-type>4</beat-type></time></attributes>"
    "<note><pitch><step>G</step><octave>4</octave></pitch><duration>2</duration></note></measure></part>"
    "</score-partwise>";

const std::string lesson =
    "title      = \"gull-song\"\n"
    "key        = \"G major\"\n"
    "meter      = \"2/4\"\n"
    "instrument = \"ukulele\"\n"
    "\n"
    "[[example]]\n"
    "tab = '''\n"
    "count | 1 2 |\n"
    "A     |     |\n"
    "E     |     |\n"
    "C     |     |\n"
    "G     | 0   |\n"
    "'''\n";

struct Shed {
  platform::MemorySystem system;
  Console console;

  Shed() { system.files["gull-song.musicxml"] = score; }

  Exit run(std::vector<std::string> words) {
    console = {};
    words.insert(words.begin(), "adopt");
    return command::run(std::move(words), system, console);
  }
};

}  // namespace

TEST_CASE("adopt writes a lesson, and to standard output where no file is named") {
  Shed shed;
  REQUIRE(shed.run({"gull-song.musicxml", "-o", "a.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  CHECK(shed.system.files.at("a.lesson.toml") == lesson);
  REQUIRE(shed.run({"gull-song.musicxml"}) == Exit::done);
  CHECK(shed.system.standard_output == lesson);
  shed.system.standard_output.clear();
  REQUIRE(shed.run({"gull-song.musicxml", "-o", "-"}) == Exit::done);
  CHECK(shed.system.standard_output == lesson);
}

TEST_CASE("what adopt refuses") {
  Shed shed;
  const auto said = [&](std::vector<std::string> words, Exit exit) {
    CHECK(shed.run(std::move(words)) == exit);
    return shed.console.errors;
  };
  CHECK(said({}, Exit::request_wrong) ==
        "fretsheaf: error: adopt which score? name its file\n"
        "help: fretsheaf --help lists the verbs and their options\n");
  CHECK(said({"no.musicxml"}, Exit::unreadable) == "fretsheaf: error: no.musicxml: is not there\n");
  CHECK(said({"gull-song.musicxml", "--instrument", "lute"}, Exit::request_wrong)
            .starts_with("fretsheaf: error: --instrument lute: "));
  shed.system.files["a.lesson.toml"] = "kept";
  CHECK(said({"gull-song.musicxml", "-o", "a.lesson.toml"}, Exit::unreadable) ==
        "fretsheaf: error: a.lesson.toml: is there already, and is not overwritten; choose another name\n");
  CHECK(shed.system.files.at("a.lesson.toml") == "kept");
  shed.system.files["bad.musicxml"] = "<html/>";
  CHECK(said({"bad.musicxml", "-o", "b.lesson.toml"}, Exit::lesson_wrong) ==
        "bad.musicxml:1:1: error: this is no MusicXML score: it begins with `html`\n"
        "  <html/>\n"
        "  ^^^^^\n"
        "help: a score begins with `score-partwise`\n");
  CHECK(shed.system.files.count("b.lesson.toml") == 0);
}
