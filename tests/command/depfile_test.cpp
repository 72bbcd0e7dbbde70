// What an output was made from, for build systems: asked of Make and Ninja themselves.
#include "command/depfile.h"

#include <catch2/catch.hpp>

#include "command/sheaf_fixture.h"
#include "support/running.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;

namespace {

const char* const makefile =
    "two tides.d-dorian.pdf: two\\ tides.lesson.toml\n"
    "\tfretsheaf typeset 'two tides.lesson.toml' --depfile tides.d && echo made\n"
    "-include tides.d\n";

const char* const build_ninja =
    "rule typeset\n"
    "  command = fretsheaf typeset $in --as pdf,musicxml --depfile $out.d && echo made\n"
    "  depfile = $out.d\n"
    "build two$ tides.d-dorian.pdf | two$ tides.d-dorian.musicxml: typeset two$ tides.lesson.toml\n";

struct Folder {
  TemporaryFolder folder;

  Folder() {
    put(folder / "two tides.lesson.toml", "template = \"look #1.toml\"\n" + test::course_lesson(1));
    put(folder / "look #1.toml", "[staff]\nnatural-quarter = 40\n");
    put(folder / "sheaf.toml", "[defaults]\nteacher = \"Eelgrass Strings\"\n");
  }

  // Whether a build makes the handout.
  bool makes(const std::string& build) const {
    std::string said;
    INFO(said);
    REQUIRE(test::shell(build, folder.path(), &said) == 0);
    return said.find("made\n") != std::string::npos;
  }

  void change(const std::string& name) const {
    REQUIRE(test::shell("echo '# changed' >>'" + name + "'", folder.path()) == 0);
  }
};

}  // namespace

TEST_CASE("a depfile is a rule, with blanks and signs written as Make reads them") {
  const sheaf::Inputs inputs = {{"a b.toml", {}}, {"c#d$e.toml", {}}, {"-", {}}};
  CHECK(command::depfile({"out/one two.pdf", "x.svg"}, inputs) ==
        "out/one\\ two.pdf x.svg: \\\n  a\\ b.toml \\\n  c\\#d$$e.toml\n");
}

TEST_CASE("a depfile names the lesson, its sheaf.toml, its template and its fonts") {
  const Folder shed;
  REQUIRE(test::shell("fretsheaf typeset 'two tides.lesson.toml' --depfile tides.d", shed.folder.path()) == 0);
  const std::string text = bytes_of(shed.folder / "tides.d");
  CHECK(text.find("two\\ tides.d-dorian.pdf: \\\n") == 0);
  for (const char* part : {" look\\ \\#1.toml", " sheaf.toml", " two\\ tides.lesson.toml", "NotoMusic", ".otf"}) {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
}

TEST_CASE("standard output is no output of a build, and a run with errors writes no depfile") {
  test::CourseInMemory shed;
  command::Console console;
  CHECK(command::run({"typeset", "course/one.lesson.toml", "--to", "-", "--depfile", "d"}, shed.system, console) ==
        command::Exit::request_wrong);
  CHECK(console.errors ==
        "fretsheaf: error: --depfile: standard output has no name that a build could know; name a folder with --to\n");
  shed.system.files["course/one.lesson.toml"] += "unknown = 1\n";
  CHECK(command::run({"typeset", "course/one.lesson.toml", "--depfile", "d"}, shed.system, console) ==
        command::Exit::lesson_wrong);
  CHECK_FALSE(shed.system.files.contains("d"));
}

TEST_CASE("Make makes a handout anew when anything has changed that it was made from, and only then") {
  const Folder shed;
  // A target with a blank in its name, as Make writes it.
  std::string text = makefile;
  text.insert(3, "\\");
  put(shed.folder / "Makefile", text);
  CHECK(shed.makes("make"));
  CHECK_FALSE(shed.makes("make"));
  for (const char* name : {"two tides.lesson.toml", "sheaf.toml", "look #1.toml"}) {
    shed.change(name);
    CAPTURE(name);
    CHECK(shed.makes("make"));
    CHECK_FALSE(shed.makes("make"));
  }
}

TEST_CASE("Ninja makes a handout anew when anything has changed that it was made from, and only then") {
  const Folder shed;
  put(shed.folder / "build.ninja", build_ninja);
  CHECK(shed.makes("ninja"));
  CHECK_FALSE(shed.makes("ninja"));
  for (const char* name : {"two tides.lesson.toml", "sheaf.toml", "look #1.toml"}) {
    shed.change(name);
    CAPTURE(name);
    CHECK(shed.makes("ninja"));
    CHECK_FALSE(shed.makes("ninja"));
  }
}
