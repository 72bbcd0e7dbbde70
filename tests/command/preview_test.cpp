// preview: what it refuses to begin. What it does when it has begun is tested in a browser.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "command/command.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using command::Exit;

namespace {

struct Refused {
  Exit exit;
  std::string said;
};

Refused run(std::vector<std::string> words) {
  platform::MemorySystem system;
  system.files["tide.lesson.toml"] = "";
  command::Console console;
  words.insert(words.begin(), "preview");
  const Exit exit = command::run(std::move(words), system, console);
  CHECK(console.out.empty());
  return {exit, console.errors};
}

}  // namespace

TEST_CASE("a preview of nothing, of standard input and on no port is refused") {
  const std::string help = "help: fretsheaf --help lists the verbs and their options\n";
  CHECK(run({}).said == "fretsheaf: error: preview which lesson? name its file\n" + help);
  CHECK(run({}).exit == Exit::request_wrong);
  CHECK(run({"-"}).said ==
        "fretsheaf: error: preview watches a file, and standard input is none: name the lesson's file\n");
  CHECK(run({"-"}).exit == Exit::request_wrong);
  for (const char* port : {"0", "65536", "-1", "80x", "99999999999"}) {
    CAPTURE(port);
    const Refused refused = run({"tide.lesson.toml", std::string("--port=") + port});
    CHECK(refused.exit == Exit::request_wrong);
    CHECK(refused.said == "fretsheaf: error: --port " + std::string(port) + ": write a number from 1 to 65535\n");
  }
  CHECK(run({"tide.lesson.toml", "--opne"}).said ==
        "fretsheaf: error: preview has no option '--opne'; did you mean '--open'?\n" + help);
}

TEST_CASE("a preview of a file that is not there names those that are") {
  const Refused refused = run({"tides.lesson.toml"});
  CHECK(refused.exit == Exit::unreadable);
  CHECK(refused.said == "fretsheaf: error: tides.lesson.toml: is not there; did you mean 'tide.lesson.toml'?\n");
}
