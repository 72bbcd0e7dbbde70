// `check --json`: the findings as a document for editors.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>

#include "command/command.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Exit;
using nlohmann::json;

namespace {

const std::string grid = "[[example]]\ntab = '''\ncount | 1   2   3   4   |\nA     | 5       5       |\n'''\n";
const std::string good = "title = \"Two notes\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n" + grid;
// The clef lies outside the first plane: one code point, two UTF-16 units.
const std::string bad =
    "title = \"Two notes\"\nkey = \"D dorian\"\ninstrument = \"bass\"\nintro = \"\U0001D11E {{kee}}\"\n" + grid;

struct Shed {
  platform::DiskSystem disk;
  platform::MemorySystem system{disk};
  command::Console console;
};

}  // namespace

TEST_CASE("check --json gives every lesson, and each finding with its code and its place") {
  Shed shed;
  shed.system.files = {{"good.lesson.toml", good}, {"bad.lesson.toml", bad}};
  CHECK(command::run({"check", "--json", "good.lesson.toml", "bad.lesson.toml"}, shed.system, shed.console) ==
        Exit::lesson_wrong);
  CHECK(shed.console.errors.empty());
  const json document = json::parse(shed.console.out);
  CHECK(document.at("version") == 1);
  const json& files = document.at("files");
  REQUIRE(files.size() == 2);
  CHECK(files[0] == json{{"file", "good.lesson.toml"}, {"diagnostics", json::array()}});
  CHECK(files[1].at("file") == "bad.lesson.toml");
  REQUIRE(files[1].at("diagnostics").size() == 1);
  const json& found = files[1].at("diagnostics")[0];
  CHECK(found.at("severity") == "error");
  CHECK(found.at("code") == "unknown-placeholder");
  CHECK(found.at("message") == "'{{kee}}' is not known");
  CHECK(found.at("range").at("start") == json{{"line", 4}, {"column", 12}, {"utf16", 13}});
  CHECK(found.at("range").at("end") == json{{"line", 4}, {"column", 19}, {"utf16", 20}});
}

TEST_CASE("a sheaf.toml that is named for a lesson is no lesson with errors") {
  Shed shed;
  shed.system.files = {{"course/sheaf.toml", "[defaults]\nteacher = \"Eelgrass Strings\"\n"}};
  for (const char* verb : {"check", "typeset", "say"}) {
    CAPTURE(verb);
    shed.console = {};
    CHECK(command::run({verb, "course/sheaf.toml"}, shed.system, shed.console) == Exit::lesson_wrong);
    CHECK(shed.console.errors ==
          "course/sheaf.toml:1:1: error: this file says what lessons have in common, and is none\n"
          "  [defaults]\n"
          "  ^\n"
          "help: name a lesson; fretsheaf sheaf makes those of a whole folder\n");
  }
}

TEST_CASE("check --json says of a file that cannot be read why, and goes on") {
  Shed shed;
  shed.system.files = {{"good.lesson.toml", good}};
  CHECK(command::run({"check", "--json", "gone.lesson.toml", "good.lesson.toml"}, shed.system, shed.console) ==
        Exit::unreadable);
  CHECK(shed.console.errors == "fretsheaf: error: gone.lesson.toml: is not there; there is good.lesson.toml\n");
  const json files = json::parse(shed.console.out).at("files");
  REQUIRE(files.size() == 2);
  CHECK(files[0].at("file") == "gone.lesson.toml");
  REQUIRE(files[0].at("diagnostics").size() == 1);
  const json start = {{"line", 1}, {"column", 1}, {"utf16", 1}};
  CHECK(files[0].at("diagnostics")[0] == json{{"severity", "error"},
                                              {"code", "file-unreadable"},
                                              {"message", "is not there; there is good.lesson.toml"},
                                              {"help", ""},
                                              {"range", {{"start", start}, {"end", start}}}});
  CHECK(files[1] == json{{"file", "good.lesson.toml"}, {"diagnostics", json::array()}});
}

TEST_CASE("check --json reads standard input, and is silent where a name is not UTF-8") {
  Shed shed;
  shed.system.standard_input = good;
  shed.system.files = {{"caf\xE9.lesson.toml", good}};
  CHECK(command::run({"check", "--json", "-", "caf\xE9.lesson.toml"}, shed.system, shed.console) == Exit::done);
  const json document = json::parse(shed.console.out);
  CHECK(document.at("files")[0].at("file") == "standard input");
  CHECK(document.at("files")[1].at("file") == "caf\xEF\xBF\xBD.lesson.toml");
}
