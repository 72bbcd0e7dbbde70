// The verbs on files in memory: what is written, what is said, and how a run ends.
#include "command/command.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "support/project.h"
#include "support/temporary_folder.h"

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

  Exit run(std::vector<std::string> words) {
    console = {};
    return command::run(std::move(words), system, console);
  }
};

}  // namespace

TEST_CASE("typeset makes a PDF beside the lesson, named by the lesson and its key") {
  Shed shed;
  shed.system.files["shed/two-notes.lesson.toml"] = good;
  CHECK(shed.run({"typeset", "shed/two-notes.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  REQUIRE(shed.system.files.count("shed/two-notes.d-dorian.pdf") == 1);
  CHECK(shed.system.files["shed/two-notes.d-dorian.pdf"].substr(0, 5) == "%PDF-");
}

TEST_CASE("a handout's name says the template that the command line chose, by its name alone") {
  Shed shed;
  shed.system.files["two-notes.lesson.toml"] = good;
  shed.system.files["looks/wide.toml"] = "[staff]\nnatural-quarter = 60\n";
  CHECK(shed.run({"typeset", "two-notes.lesson.toml", "--template", "music-stand", "--as", "pdf,svg"}) == Exit::done);
  CHECK(shed.system.files.count("two-notes.d-dorian.music-stand.pdf") == 1);
  CHECK(shed.system.files.count("two-notes.d-dorian.music-stand.p1.svg") == 1);
  CHECK(shed.run({"typeset", "two-notes.lesson.toml", "--template", "looks/wide.toml"}) == Exit::done);
  CHECK(shed.system.files.count("two-notes.d-dorian.wide.pdf") == 1);
  // The lesson's own template is no choice of the command line.
  shed.system.files["own.lesson.toml"] = "template = \"looks/wide.toml\"\n" + good;
  CHECK(shed.run({"typeset", "own.lesson.toml"}) == Exit::done);
  CHECK(shed.system.files.count("own.d-dorian.pdf") == 1);
}

TEST_CASE("typeset makes every format that --as names, in the folder that --to names") {
  Shed shed;
  shed.system.files["two-notes.lesson.toml"] = good;
  CHECK(shed.run({"typeset", "two-notes.lesson.toml", "--as", "svg,musicxml", "--to", "out"}) == Exit::done);
  CHECK(shed.system.files.count("out/two-notes.d-dorian.p1.svg") == 1);
  CHECK(shed.system.files.count("out/two-notes.d-dorian.musicxml") == 1);
  CHECK(shed.system.files.count("out/two-notes.d-dorian.pdf") == 0);
}

TEST_CASE("a word after the verb is a file's name, though a verb be called so") {
  Shed shed;
  CHECK(shed.run({"new", "check"}) == Exit::done);
  CHECK(shed.system.files.count("check") == 1);
  CHECK(shed.run({"schema", "sheaf"}) == Exit::done);
  CHECK(shed.console.out.find("\"fretsheaf sheaf\"") != std::string::npos);
}

TEST_CASE("where --as says nothing, typeset makes the formats that the lesson's sheaf.toml names") {
  Shed shed;
  shed.system.files["sheaf.toml"] = "[output]\nas = [\"musicxml\", \"svg\"]\n";
  shed.system.files["two-notes.lesson.toml"] = good;
  CHECK(shed.run({"typeset", "two-notes.lesson.toml"}) == Exit::done);
  CHECK(shed.system.files.count("two-notes.d-dorian.musicxml") == 1);
  CHECK(shed.system.files.count("two-notes.d-dorian.p1.svg") == 1);
  CHECK(shed.system.files.count("two-notes.d-dorian.pdf") == 0);
}

TEST_CASE("asked to split, typeset gives every example that has music a MusicXML file of its own, compressed or not") {
  Shed shed;
  const std::string blank = "\n[[example]]\nblank-bars = 2\n";
  shed.system.files["a.lesson.toml"] = good + blank + good.substr(good.find("[[example]]"));
  CHECK(shed.run({"typeset", "a.lesson.toml", "--split", "--as", "musicxml,mxl"}) == Exit::done);
  for (const char* name : {"a.d-dorian.1.musicxml", "a.d-dorian.3.musicxml", "a.d-dorian.1.mxl", "a.d-dorian.3.mxl"}) {
    CHECK(shed.system.files.count(name) == 1);
  }
  CHECK(shed.system.files.size() == 5);
  CHECK(shed.run({"typeset", "a.lesson.toml", "--as", "mxl"}) == Exit::done);
  CHECK(shed.system.files["a.d-dorian.mxl"].substr(30, 42) == "mimetypeapplication/vnd.recordare.musicxml");
}

TEST_CASE("SVG pages of an earlier, longer handout are removed") {
  Shed shed;
  shed.system.files["two-notes.lesson.toml"] = good;
  for (const char* page : {"2", "3"}) shed.system.files[std::string("two-notes.d-dorian.p") + page + ".svg"] = "old";
  CHECK(shed.run({"typeset", "two-notes.lesson.toml", "--as", "svg"}) == Exit::done);
  CHECK(shed.system.files.count("two-notes.d-dorian.p1.svg") == 1);
  CHECK(shed.system.files.count("two-notes.d-dorian.p2.svg") == 0);
  CHECK(shed.system.files.count("two-notes.d-dorian.p3.svg") == 0);
}

TEST_CASE("a lesson with errors leaves the earlier handout as it was, and the good lessons are made") {
  Shed shed;
  shed.system.files["good.lesson.toml"] = good;
  shed.system.files["bad.lesson.toml"] = "titel = \"x\"\n" + good;
  shed.system.files["bad.d-dorian.pdf"] = "earlier";
  CHECK(shed.run({"typeset", "bad.lesson.toml", "good.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.system.files["bad.d-dorian.pdf"] == "earlier");
  CHECK(shed.system.files.count("good.d-dorian.pdf") == 1);
  CHECK(shed.console.errors.find("bad.lesson.toml:1:1: error:") == 0);
}

TEST_CASE("a handout of more than 1,000 pages is refused at the title, and not laid out to its end") {
  Shed shed;
  std::string text = "title = \"No end\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
  for (int i = 0; i < 100; ++i) text += "[[example]]\nblank-bars = 200\nbars-per-line = 1\n";
  shed.system.files["long.lesson.toml"] = text;
  CHECK(shed.run({"typeset", "long.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors ==
        "long.lesson.toml:1:9: error: this handout would have more than 1000 pages\n"
        "  title = \"No end\"\n"
        "          ^^^^^^^^\n"
        "help: divide the lesson into several\n");
  CHECK(shed.system.files.count("long.d-dorian.pdf") == 0);
}

TEST_CASE("standard input is typeset to standard output") {
  Shed shed;
  shed.system.standard_input = good;
  CHECK(shed.run({"typeset", "-", "--to", "-"}) == Exit::done);
  CHECK(shed.system.standard_output.substr(0, 5) == "%PDF-");
}

TEST_CASE("what is wrong with the command line is said, with the nearest word") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  const std::string help = "help: fretsheaf --help lists the verbs and their options\n";
  struct Case {
    std::vector<std::string> words;
    std::string said;
  };
  const std::vector<Case> cases = {
      {{"typset", "a.lesson.toml"}, "fretsheaf: error: there is no verb 'typset'; did you mean 'typeset'?\n" + help},
      {{"typeset"}, "fretsheaf: error: typeset which lesson? name its file\n" + help},
      {{"check"}, "fretsheaf: error: check which lesson? name its file\n" + help},
      {{"new"}, "fretsheaf: error: new needs the name of the file to write\n" + help},
      {{"a.lesson.toml"},
       "fretsheaf: error: 'a.lesson.toml' is a lesson, not a verb\n"
       "help: fretsheaf typeset a.lesson.toml makes its handout\n"},
      {{"new", "a", "b"}, "fretsheaf: error: 'b' is one word too many for new\n" + help},
      {{"typeset", "a.lesson.toml", "--keys", "E"},
       "fretsheaf: error: typeset has no option '--keys'; did you mean '--key'?\n" + help},
      {{"typeset", "a.lesson.toml", "--to"}, "fretsheaf: error: '--to' needs a value after it\n" + help},
      {{"typeset", "a.lesson.toml", "--as", "docx"},
       "fretsheaf: error: --as docx: there is no such format; it takes pdf, svg, musicxml and mxl\n"},
      {{"typeset", "a.lesson.toml", "--template", "musik-stand"},
       "fretsheaf: error: there is no template 'musik-stand'; did you mean 'music-stand'?\n"},
      {{"typeset", "x/a.lesson.toml", "y/a.lesson.toml", "--to", "z"},
       "fretsheaf: error: 'x/a.lesson.toml' and 'y/a.lesson.toml' would both be written to 'z/a.…'; typeset them into "
       "different folders with --to\n"},
      {{"new", "a.toml", "--instrument", "ukelele"},
       "fretsheaf: error: --instrument ukelele: there is no such instrument; did you mean 'ukulele'?\n"},
  };
  for (const Case& one : cases) {
    INFO(one.said);
    CHECK(shed.run(one.words) == Exit::request_wrong);
    CHECK(shed.console.errors == one.said);
  }
  CHECK(shed.system.files.size() == 1);
}

TEST_CASE("what cannot be read or written ends with status 3") {
  Shed shed;
  CHECK(shed.run({"typeset", "none.lesson.toml"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "fretsheaf: error: none.lesson.toml: is not there; fretsheaf new FILE writes a lesson to start from\n");
  shed.system.files["shed/a.lesson.toml"] = good;
  CHECK(shed.run({"check", "shed"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "fretsheaf: error: shed: is a folder; name a lesson in it, or make the handouts of all of them with: "
        "fretsheaf sheaf shed\n");
  shed.system.write_failures["shed/a.d-dorian.pdf"] = {platform::FileError::Kind::not_allowed, "cannot be written"};
  CHECK(shed.run({"typeset", "shed/a.lesson.toml"}) == Exit::unreadable);
  CHECK(shed.console.errors == "fretsheaf: error: shed/a.d-dorian.pdf: cannot be written\n");
  shed.system.files["big.lesson.toml"] = std::string(std::size_t{64} << 20, '#');
  CHECK(shed.run({"check", "big.lesson.toml"}) == Exit::unreadable);
  CHECK(shed.console.errors == "fretsheaf: error: big.lesson.toml: is larger than 4 MiB\n");
}

TEST_CASE("new writes a starter that typesets without a word, for every instrument, and never overwrites") {
  Shed shed;
  for (const std::string_view name : fretboard::instrument_names()) {
    const std::string instrument(name);
    INFO(instrument);
    CHECK(shed.run({"new", instrument + ".lesson.toml", "--instrument", instrument}) == Exit::done);
    CHECK(shed.run({"typeset", instrument + ".lesson.toml"}) == Exit::done);
    CHECK(shed.console.errors.empty());
    const std::string before = shed.system.files[instrument + ".lesson.toml"];
    CHECK(shed.run({"new", instrument + ".lesson.toml"}) == Exit::unreadable);
    CHECK(shed.console.errors == "fretsheaf: error: " + instrument +
                                     ".lesson.toml: is there already, and is not overwritten; choose another name\n");
    CHECK(shed.system.files[instrument + ".lesson.toml"] == before);
  }
}

TEST_CASE("check says nothing of a good lesson and writes nothing") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  CHECK(shed.run({"check", "a.lesson.toml"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  CHECK(shed.system.files.size() == 1);
}

TEST_CASE("an unknown template in the lesson is an error with its place") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = "template = \"music-stnd\"\n" + good;
  CHECK(shed.run({"typeset", "a.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors ==
        "a.lesson.toml:1:12: error: there is no template 'music-stnd'; did you mean 'music-stand'?\n"
        "  template = \"music-stnd\"\n"
        "             ^^^^^^^^^^^^\n"
        "help: the templates are compact, large-print, music-stand; one of your own is named by its path, which ends "
        "in .toml\n");
}

TEST_CASE("the version is said") {
  Shed shed;
  CHECK(shed.run({"--version"}) == Exit::done);
  const std::string build = bytes_of(test::project_folder() + "/CMakeLists.txt");
  const std::string version = shed.console.out.substr(0, shed.console.out.size() - 1);
  CHECK(version.starts_with("fretsheaf "));
  CHECK(build.find("project(fretsheaf VERSION " + version.substr(10) + " ") != std::string::npos);
}

TEST_CASE("--help says the verbs") {
  Shed shed;
  CHECK(shed.run({"--help"}) == Exit::done);
  for (const char* verb : {"fretsheaf typeset", "fretsheaf check", "fretsheaf new"}) {
    CHECK(shed.console.out.find(verb) != std::string::npos);
  }
  CHECK(shed.run({}) == Exit::request_wrong);
}

TEST_CASE("the same lesson gives the same bytes twice") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = good;
  CHECK(shed.run({"typeset", "a.lesson.toml", "--as", "pdf,svg,musicxml", "--to", "one"}) == Exit::done);
  CHECK(shed.run({"typeset", "a.lesson.toml", "--as", "pdf,svg,musicxml", "--to", "two"}) == Exit::done);
  for (const char* end : {".pdf", ".p1.svg", ".musicxml"}) {
    const std::string name = std::string("/a.d-dorian") + end;
    CHECK(shed.system.files["one" + name] == shed.system.files["two" + name]);
    CHECK(!shed.system.files["one" + name].empty());
  }
}

TEST_CASE("a character that no font has is an error that names it and its place") {
  Shed shed;
  shed.system.files["a.lesson.toml"] = "subtitle = \"Snow ☃\"\n" + good;
  CHECK(shed.run({"typeset", "a.lesson.toml"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors ==
        "a.lesson.toml:1:18: error: no font of the template has the character '☃' (U+2603)\n"
        "  subtitle = \"Snow ☃\"\n"
        "                   ^\n"
        "help: write it another way, or name a font that has it in a template of your own\n");
  CHECK(shed.system.files.size() == 1);
}
