#include <catch2/catch.hpp>

#include "lesson/reader_support.h"

// What lessons share: the nearest sheaf.toml, in the lesson's folder or above it.
namespace fretsheaf::lesson::test {
namespace {

const std::string lesson = "title = \"Low tide\"\n[[example]]\nblank-bars = 1\n";

ReadLesson read_at(const std::string& path, const platform::System& system) {
  return read_lesson(path, lesson, system);
}

}  // namespace

TEST_CASE("Defaults stand in for keys that the lesson does not have, and give way to those that it has") {
  platform::MemorySystem system;
  system.files["sheaf.toml"] =
      "[defaults]\nkey = \"G major\"\ninstrument = \"ukulele\"\nteacher = \"Eelgrass Strings\"\nseries = \"Monday\"\n";
  const ReadLesson found =
      read("title = \"Low tide\"\nkey = \"F major\"\nseries = \"\"\n[[example]]\nblank-bars = 1\n", system);
  CHECK(said(found) == "");
  REQUIRE(found.lesson);
  CHECK(found.lesson->key.to_string() == "F major");
  CHECK(found.lesson->instrument->name == "ukulele");
  CHECK(found.lesson->neck.frets == 15);
  CHECK(found.lesson->teacher == "Eelgrass Strings");
  CHECK(found.lesson->series.empty());
  CHECK(found.lesson->examples.at(0).key.to_string() == "F major");
}

TEST_CASE("Keys that lessons share as their also-in may be a lesson's own, but not of another mode") {
  platform::MemorySystem system;
  system.files["sheaf.toml"] = "[defaults]\ninstrument = \"bass\"\nalso-in = [\"G major\", \"D major\"]\n";
  const ReadLesson found = read("key = \"D major\"\n" + lesson, system);
  CHECK(said(found) == "");
  REQUIRE(found.lesson);
  REQUIRE(found.lesson->also_in.size() == 1);
  CHECK(found.lesson->also_in[0].value.to_string() == "G major");
  const std::string help = "help: write an 'also-in' in the lesson's own file, which goes before this one\n";
  CHECK(said(read("key = \"D dorian\"\n" + lesson, system)) ==
        "sheaf.toml:3:12-21: error: 'G major' has another mode than the lesson's D dorian\n" + help +
            "sheaf.toml:3:23-32: error: 'D major' has another mode than the lesson's D dorian\n" + help);
  CHECK(said(read("key = \"D dorian\"\nalso-in = []\n" + lesson, system)) == "");
}

// A folder is looked into as the path names it: where a link is among its parts, `a/..` need not be where `a` stands.
TEST_CASE("The nearest sheaf.toml counts") {
  const std::string here = "[defaults]\nkey = \"G major\"\ninstrument = \"bass\"\n";
  const std::string above = "[defaults]\nkey = \"F major\"\ninstrument = \"bass\"\n";
  struct Way {
    std::string lesson;
    std::string sheaf;
    std::string root;
  };
  const Way way =
      GENERATE(Way{"a/b/tide.lesson.toml", "a/b/sheaf.toml", "a/b/"}, Way{"a/b/tide.lesson.toml", "a/sheaf.toml", "a/"},
               Way{"a/b/tide.lesson.toml", "sheaf.toml", ""}, Way{"tide.lesson.toml", "../sheaf.toml", "../"},
               Way{"../x/tide.lesson.toml", "../../../sheaf.toml", "../../../"},
               Way{"./a/../b/tide.lesson.toml", "./a/../b/sheaf.toml", "./a/../b/"},
               Way{"/home/tide.lesson.toml", "/sheaf.toml", "/"});
  platform::MemorySystem system;
  system.files["../../../../sheaf.toml"] = above;
  system.files[way.sheaf] = here;
  INFO(way.lesson << " under " << way.sheaf);
  const ReadLesson found = read_at(way.lesson, system);
  CHECK(said(found) == "");
  REQUIRE(found.lesson);
  CHECK(found.lesson->key.to_string() == "G major");
  CHECK(found.root == way.root);
}

TEST_CASE("Without a sheaf.toml paths stay inside the lesson's own folder") {
  const ReadLesson found =
      read_lesson("a/b/tide.lesson.toml", base + "[[example]]\nblank-bars = 1\n", platform::MemorySystem());
  CHECK(found.root == "a/b/");
}

TEST_CASE("What is wrong in a sheaf.toml is said with its name") {
  platform::MemorySystem system;
  system.files["sheaf.toml"] =
      "key = \"D dorian\"\nzither = 1\n[defaults]\ninstrument = \"bass\"\nkey = \"D\"\ntitle = \"x\"\ntempo = 92\n"
      "papper = \"a5\"\n[output]\nas = [\"pdf\", \"docx\"]\nfolder = 1\nfoldr = \"x\"\n";
  CHECK(said(read_at("tide.lesson.toml", system)) ==
        R"~(sheaf.toml:1:1-4: error: a sheaf.toml has no key 'key'
help: write it under [defaults]
sheaf.toml:2:1-7: error: a sheaf.toml has no key 'zither'
help: its keys are defaults and output
sheaf.toml:5:7-10: error: 'D' does not say its mode
help: write "D major" or "D minor"; the modes are major, minor, dorian, phrygian, lydian, mixolydian or locrian
sheaf.toml:6:1-6: error: [defaults] has no key 'title'
help: it belongs in the lesson's own file
sheaf.toml:7:1-6: error: [defaults] has no key 'tempo'
help: it belongs in the lesson's own file
sheaf.toml:8:1-7: error: [defaults] has no key 'papper'
help: did you mean 'paper'?
sheaf.toml:8:10-14: error: 'paper' cannot be 'a5'
help: did you mean 'a4'?
sheaf.toml:10:14-20: error: 'as' cannot be 'docx'
help: it can be pdf, svg, musicxml or mxl
sheaf.toml:11:10-11: error: 'folder' must be a text in quotes, not a whole number
help: write folder = "handouts"
sheaf.toml:12:1-6: error: [output] has no key 'foldr'
help: did you mean 'folder'?
)~");
}

TEST_CASE("A sheaf.toml that cannot be read is an error") {
  platform::MemorySystem system;
  system.files["sheaf.toml"] = "[defaults\n";
  CHECK(said(read_at("tide.lesson.toml", system)) ==
        "1:1-1: error: this lesson has no 'instrument'\n"
        "help: write instrument = \"bass\" at its top\n"
        "1:1-1: error: this lesson has no 'key'\n"
        "help: write key = \"D dorian\" at its top: a tonic, then its mode\n"
        "sheaf.toml:1:1-10: error: this heading is not closed\nhelp: write [defaults]\n");
  system.read_failures["sheaf.toml"] = {platform::FileError::Kind::not_allowed, "may not be read"};
  const ReadLesson found = read_lesson("tide.lesson.toml", base + "[[example]]\nblank-bars = 1\n", system);
  CHECK(said(found) == "sheaf.toml:1:1-1: error: this file may not be read\n");
  CHECK_FALSE(found.lesson);
}

TEST_CASE("The output that a sheaf.toml asks for") {
  platform::MemorySystem system;
  system.files["sheaf.toml"] =
      "[defaults]\nkey = \"G major\"\ninstrument = \"bass\"\n[output]\nfolder = \"out\"\nas = [\"svg\", \"mxl\"]\n";
  const ReadLesson found = read_at("tide.lesson.toml", system);
  CHECK(said(found) == "");
  REQUIRE(found.output.folder);
  CHECK(found.output.folder->value == "out");
  REQUIRE(found.output.formats.size() == 2);
  CHECK(found.output.formats[0].value == "svg");
  CHECK(found.output.formats[1].value == "mxl");
}

TEST_CASE("Handouts stay in the folder of the sheaf.toml that says where they go") {
  const auto reading = [](const std::string& folder) {
    platform::MemorySystem system;
    system.files["a/sheaf.toml"] =
        "[defaults]\nkey = \"G major\"\ninstrument = \"bass\"\n[output]\nfolder = \"" + folder + "\"\n";
    system.files["a/hand"] = "";
    system.links["a/hand"] = "elsewhere";
    return read_at("a/b/tide.lesson.toml", system);
  };
  for (const std::string inside : {".", "out", "./out/", "out/../made", "b/.."}) {
    INFO(inside);
    CHECK(said(reading(inside)) == "");
    CHECK(reading(inside).output.folder.value().value == inside);
  }
  for (const std::string outside : {"..", "../out", "out/../../up", "/tmp/out", "hand", "hand/deeper/down"}) {
    INFO(outside);
    const ReadLesson found = reading(outside);
    CHECK(said(found) == "a/sheaf.toml:5:10-" + std::to_string(outside.size() + 12) + ": error: '" + outside +
                             "' lies outside the folder of this sheaf.toml\n"
                             "help: write folder = \"handouts\", a folder beside it; --to has handouts made anywhere "
                             "else\n");
    CHECK_FALSE(found.output.folder);
  }
}

TEST_CASE("A logo lies beside the file that names it, inside the folder of the sheaf") {
  platform::MemorySystem system;
  system.files["a/sheaf.toml"] = "[defaults]\nlogo = \"pictures/lantern.svg\"\nlogo-alt = \"A lantern\"\n";
  system.files["a/pictures/lantern.svg"] = "<svg/>";
  system.files["a/b/boat.PNG"] = "PNG";
  const ReadLesson shared = read_lesson("a/b/tide.lesson.toml", base + "[[example]]\nblank-bars = 1\n", system);
  CHECK(said(shared) == "");
  REQUIRE(shared.lesson);
  CHECK(shared.lesson->logo_path == "a/pictures/lantern.svg");

  const auto with_logo = [&](const std::string& logo) {
    return read_lesson("a/b/tide.lesson.toml", base + "logo = \"" + logo + "\"\n[[example]]\nblank-bars = 1\n", system);
  };
  CHECK(with_logo("boat.PNG").lesson.value().logo_path == "a/b/boat.PNG");
  CHECK(with_logo("../pictures/lantern.svg").lesson.value().logo_path == "a/pictures/lantern.svg");
  CHECK(said(with_logo("../../lantern.svg")) ==
        "4:8-27: error: '../../lantern.svg' lies outside the folder of these lessons\n"
        "help: put the logo beside the lesson file and write its name alone\n");
}

}  // namespace fretsheaf::lesson::test
