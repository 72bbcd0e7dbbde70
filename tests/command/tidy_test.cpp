// tidy: what is written back, what is said, and how the run ends.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Exit;

namespace {

const std::string heading =
    "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n\n[[example]]\ntab = '''\n";
const std::string slack = heading + "count | 1 2 3 4 |\nA| 5   7   |\n'''\n";
const std::string neat = heading + "count | 1 2 3 4 |\nA     | 5   7   |\n'''\n";

struct Shed {
  platform::MemorySystem system;
  command::Console console;

  Exit run(std::vector<std::string> words) {
    console = {};
    words.insert(words.begin(), "tidy");
    return command::run(std::move(words), system, console);
  }
};

}  // namespace

TEST_CASE("tidy writes a lesson back and says what it mended, and leaves a tidy one in silence") {
  Shed shed;
  shed.system.files = {{"slack.lesson.toml", slack}, {"neat.lesson.toml", neat}};
  shed.system.write_failures["neat.lesson.toml"] = {platform::FileError::Kind::other, "must not be written"};
  CHECK(shed.run({"slack.lesson.toml", "neat.lesson.toml"}) == Exit::done);
  CHECK(shed.system.files.at("slack.lesson.toml") == neat);
  CHECK(shed.console.errors == "slack.lesson.toml:7: mended: columns out of line\n");
  CHECK(shed.console.out.empty());
  CHECK(shed.run({"slack.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors.empty());
}

TEST_CASE("tidy --check says what is not tidy, changes nothing and ends with status 1") {
  Shed shed;
  shed.system.files = {{"slack.lesson.toml", slack}, {"neat.lesson.toml", neat}};
  CHECK(shed.run({"--check", "slack.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors == "slack.lesson.toml:7: not tidy: columns out of line\n");
  CHECK(shed.system.files.at("slack.lesson.toml") == slack);
  CHECK(shed.run({"--check", "neat.lesson.toml"}) == Exit::done);
}

TEST_CASE("tidy leaves a sheaf.toml as it is and says so, and tidies the lessons named with it") {
  Shed shed;
  const std::string course = "[defaults]\nteacher   =   \"Eelgrass Strings\"\n";
  shed.system.files = {{"unit/sheaf.toml", course}, {"slack.lesson.toml", slack}};
  CHECK(shed.run({"unit/sheaf.toml", "slack.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors ==
        "unit/sheaf.toml: says what the lessons of a course have in common; it has no grid, and stays as it is\n"
        "slack.lesson.toml:7: mended: columns out of line\n");
  CHECK(shed.system.files.at("unit/sheaf.toml") == course);
  CHECK(shed.system.files.at("slack.lesson.toml") == neat);
  CHECK(shed.run({"--check", "sheaf.toml"}) == Exit::done);
}

TEST_CASE("tidy reads standard input and writes standard output") {
  Shed shed;
  shed.system.standard_input = slack;
  CHECK(shed.run({"-"}) == Exit::done);
  CHECK(shed.system.standard_output == neat);
  CHECK(shed.console.errors == "standard input:7: mended: columns out of line\n");
}

TEST_CASE("tidy says the errors that stay, and which file cannot be read or written") {
  Shed shed;
  const std::string wrong = heading + "count | 1 2 3 4 5 |\nA| 5   7     |\n'''\n";
  shed.system.files = {{"wrong.lesson.toml", wrong}, {"locked.lesson.toml", slack}};
  shed.system.write_failures["locked.lesson.toml"] = {platform::FileError::Kind::not_allowed, "is locked"};
  CHECK(shed.run({"wrong.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors.starts_with("wrong.lesson.toml:7:17: error: this bar counts to 5: 1 count more than 4/4"));
  CHECK(shed.system.files.at("wrong.lesson.toml") == wrong);
  CHECK(shed.run({"locked.lesson.toml"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "locked.lesson.toml:7: mended: columns out of line\nfretsheaf: error: locked.lesson.toml: is locked\n");
  CHECK(shed.run({"gone.lesson.toml"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "fretsheaf: error: gone.lesson.toml: is not there; there are locked.lesson.toml, wrong.lesson.toml\n");
  for (const std::string near : {"locke", "Locked.toml", "locked.lesson", "loked.lesson.toml"}) {
    CHECK(shed.run({near}) == Exit::unreadable);
    CHECK(shed.console.errors == "fretsheaf: error: " + near + ": is not there; did you mean 'locked.lesson.toml'?\n");
  }
  CHECK(shed.run({}) == Exit::request_wrong);
}
