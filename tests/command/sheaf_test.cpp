// Whole courses, on files in memory: what is made, what is up to date, what is said.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "command/sheaf_fixture.h"
#include "command/sheaf_list.h"

using namespace fretsheaf;
using command::Exit;
using test::course_lesson;
using test::CourseInMemory;

namespace {

const std::string record = "course/.fretsheaf/record";

std::vector<std::string> names(const std::map<std::string, std::string>& files) {
  std::vector<std::string> all;
  for (const auto& [path, bytes] : files) all.push_back(path);
  return all;
}

}  // namespace

TEST_CASE("a course is made: every lesson, its own key and those of also-in, and then it is up to date") {
  CourseInMemory shed;
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  const auto made = shed.outputs();
  CHECK(names(made) == std::vector<std::string>{"course/one.d-dorian.pdf", "course/one.e-dorian.pdf",
                                                "course/two.d-dorian.pdf", "course/two.e-dorian.pdf",
                                                "course/unit/three.d-dorian.pdf", "course/unit/three.e-dorian.pdf"});
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
  CHECK(shed.outputs() == made);
  CHECK(shed.system.list("course/.fretsheaf") == std::vector<std::string>{"lock", "record"});
}

TEST_CASE("a handout of a course has the bytes that typeset gives it") {
  CourseInMemory shed;
  shed.run({"course"});
  const auto made = shed.outputs();
  command::Console console;
  CHECK(command::run({"typeset", "course/one.lesson.toml", "--key", "E", "--to", "out"}, shed.system, console) ==
        Exit::done);
  CHECK(shed.system.files.at("out/one.e-dorian.pdf") == made.at("course/one.e-dorian.pdf"));
}

TEST_CASE("editing a lesson makes that lesson's handouts alone, and touching it makes nothing") {
  CourseInMemory shed;
  shed.run({"course"});
  const auto before = shed.outputs();
  shed.system.changed["course/two.lesson.toml"] = 999;
  shed.run({"course"});
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
  shed.system.files["course/two.lesson.toml"] = course_lesson(7);
  shed.run({"course"});
  CHECK(shed.summary() == "made 2, up to date 4, failed 0");
  const auto after = shed.outputs();
  for (const auto& [path, bytes] : before) {
    CAPTURE(path);
    CHECK((after.at(path) == bytes) == (path.find("two") == std::string::npos));
  }
}

TEST_CASE("what everything is made from makes everything anew: the program, a sheaf.toml, a template") {
  CourseInMemory shed;
  shed.system.files["course/sheaf.toml"] = "[defaults]\nteacher = \"Eelgrass Strings\"\n";
  shed.system.files["course/unit/look.toml"] = "[staff]\nnatural-quarter = 30\n";
  shed.system.files["course/unit/three.lesson.toml"] = "template = \"look.toml\"\n" + course_lesson(3);
  shed.run({"course"});
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  shed.system.files["course/unit/look.toml"] = "[staff]\nnatural-quarter = 60\n";
  shed.run({"course"});
  CHECK(shed.summary() == "made 2, up to date 4, failed 0");
  shed.system.files["course/sheaf.toml"] = "[defaults]\nteacher = \"The shed\"\n";
  shed.run({"course"});
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  // One that lies nearer takes the other's place.
  shed.system.files["course/unit/sheaf.toml"] = "[defaults]\nteacher = \"Eelgrass Strings\"\n";
  shed.run({"course"});
  CHECK(shed.summary() == "made 2, up to date 4, failed 0");
  shed.system.build = "a newer build";
  shed.run({"course"});
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  shed.run({"course"});
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
}

TEST_CASE("a font that changes makes its handouts anew") {
  CourseInMemory shed;
  const std::string file = "Inter-Bold.otf";
  shed.system.fonts[file] = "/fonts/bold.otf";
  shed.system.files["/fonts/bold.otf"] =
      std::get<std::string>(shed.disk.read(shed.disk.font_path(file), std::size_t{1} << 26));
  shed.run({"course"});
  shed.run({"course"});
  REQUIRE(shed.summary() == "made 0, up to date 6, failed 0");
  shed.system.files["/fonts/bold.otf"] += '\0';
  shed.run({"course"});
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
}

TEST_CASE("an output that was deleted or damaged is made again, one that was only touched is not") {
  CourseInMemory shed;
  shed.run({"course"});
  const auto before = shed.outputs();
  shed.system.files.erase("course/one.d-dorian.pdf");
  shed.system.files["course/two.d-dorian.pdf"][100] ^= 1;
  shed.system.changed["course/two.d-dorian.pdf"] = 5000;
  shed.system.changed["course/two.e-dorian.pdf"] = 5000;
  shed.run({"course"});
  CHECK(shed.summary() == "made 2, up to date 4, failed 0");
  CHECK(shed.outputs() == before);
  // The new time was taken over: no hash is needed any more.
  CHECK(shed.system.files.at(record).find("\t5000\t") != std::string::npos);
  shed.run({"course"});
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
}

TEST_CASE("damage that keeps size and time is found by --verify") {
  CourseInMemory shed;
  shed.run({"course"});
  const auto before = shed.outputs();
  shed.system.files["course/two.d-dorian.pdf"][100] ^= 1;
  shed.run({"course"});
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
  shed.run({"course", "--verify"});
  CHECK(shed.summary() == "made 1, up to date 5, failed 0");
  CHECK(shed.outputs() == before);
}

TEST_CASE("a lesson with errors does not stop the others, and its handouts stay") {
  CourseInMemory shed;
  shed.run({"course"});
  const auto before = shed.outputs();
  shed.system.files["course/one.lesson.toml"] += "unknown = 1\n";
  shed.system.files["course/two.lesson.toml"] = course_lesson(7);
  CHECK(shed.run({"course"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors.find("course/one.lesson.toml:10:1: error: ") == 0);
  CHECK(shed.summary() == "made 2, up to date 2, failed 1");
  CHECK(shed.outputs().at("course/one.d-dorian.pdf") == before.at("course/one.d-dorian.pdf"));
  // It is said again as long as it is so; what is right again is up to date still.
  CHECK(shed.run({"course"}) == Exit::lesson_wrong);
  CHECK(shed.summary() == "made 0, up to date 4, failed 1");
  shed.system.files["course/one.lesson.toml"] = course_lesson(1);
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
}

TEST_CASE("a key that the neck has no room for fails alone") {
  CourseInMemory shed;
  // From the lowest note to the highest: any other key leaves the neck at one end.
  shed.system.files["course/one.lesson.toml"] =
      "title = \"Whole neck\"\nkey = \"D dorian\"\nalso-in = [\"E dorian\"]\ninstrument = \"bass\"\nfrets = 5\n"
      "[[example]]\ntab = '''\ncount | 1   2   3   4   |\nG     |     5           |\nE     | 0               |\n'''\n";
  CHECK(shed.run({"course"}) == Exit::lesson_wrong);
  CHECK(shed.summary() == "made 5, up to date 0, failed 1");
  CHECK(shed.system.files.contains("course/one.d-dorian.pdf"));
  CHECK_FALSE(shed.system.files.contains("course/one.e-dorian.pdf"));
}

TEST_CASE("handouts of a lesson or key that is gone are listed, and removed with --prune") {
  CourseInMemory shed;
  shed.run({"course"});
  shed.system.files.erase("course/one.lesson.toml");
  shed.system.files["course/two.lesson.toml"] = course_lesson(2, "[]");
  shed.system.files["course/one.e-dorian.pdf"] += " notes of mine";
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.console.errors.find(
            "course/one.d-dorian.pdf: its lesson, key or format is gone; --prune removes it\n"
            "course/one.e-dorian.pdf: its lesson, key or format is gone; --prune removes it\n"
            "course/two.e-dorian.pdf: its lesson, key or format is gone; --prune removes it\nmade 1, up to date 2, ") !=
        std::string::npos);
  CHECK(shed.outputs().size() == 6);
  CHECK(shed.run({"course", "--prune"}) == Exit::done);
  CHECK(shed.console.errors.find("course/one.d-dorian.pdf: removed\ncourse/two.e-dorian.pdf: removed\n"
                                 "course/one.e-dorian.pdf: was changed since it was made, and is kept\n") == 0);
  CHECK(names(shed.outputs()) == std::vector<std::string>{"course/one.e-dorian.pdf", "course/two.d-dorian.pdf",
                                                          "course/unit/three.d-dorian.pdf",
                                                          "course/unit/three.e-dorian.pdf"});
  shed.run({"course", "--prune"});
  CHECK(shed.console.errors.find("made 0, up to date 3, failed 0, in ") == 0);
}

TEST_CASE("what an earlier --key or --as made is gone only for a run without them") {
  CourseInMemory shed;
  shed.run({"course"});
  shed.run({"course", "--key", "G", "--as", "musicxml"});
  CHECK(shed.console.errors.find("gone") == std::string::npos);
  CHECK(shed.outputs().size() == 9);
  shed.run({"course", "--key", "A"});
  CHECK(shed.console.errors.find("gone") == std::string::npos);
  CHECK(shed.outputs().size() == 12);
  shed.run({"course", "--prune"});
  CHECK(shed.outputs().size() == 6);
}

TEST_CASE("a run of one unit prunes that unit alone") {
  CourseInMemory shed;
  shed.system.files["course/sheaf.toml"] = "[output]\nfolder = \"made\"\n";
  shed.run({"course"});
  shed.run({"course", "--key", "G"});
  CHECK(shed.outputs().size() == 9);
  shed.run({"course/unit", "--prune"});
  CHECK(shed.console.errors.find("course/made/unit/three.g-dorian.pdf: removed\nmade 0, up to date 2, ") == 0);
  CHECK(shed.outputs().size() == 8);
  shed.run({"course", "--prune"});
  CHECK(shed.outputs().size() == 6);
}

TEST_CASE("formats are those of --as, else of sheaf.toml") {
  CourseInMemory shed;
  shed.system.files["course/sheaf.toml"] = "[output]\nas = [\"musicxml\", \"svg\"]\nfolder = \"made\"\n";
  shed.run({"course"});
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  CHECK(names(shed.outputs()).size() == 12);
  CHECK(shed.system.files.contains("course/made/unit/three.e-dorian.p1.svg"));
  shed.run({"course", "--as", "svg,pdf"});
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  CHECK(shed.system.files.contains("course/made/unit/three.e-dorian.pdf"));
  // A part that is missing is made, the rest is not.
  shed.system.files.erase("course/made/one.d-dorian.p1.svg");
  const auto clock = shed.system.clock;
  shed.run({"course", "--as", "svg,pdf"});
  CHECK(shed.summary() == "made 1, up to date 5, failed 0");
  CHECK(shed.system.changed.at("course/made/one.d-dorian.p1.svg") >= clock);
  CHECK(shed.system.changed.at("course/made/one.d-dorian.pdf") < clock);
}

TEST_CASE("asked to list, a course prints each job as a command that makes just that job and records it") {
  CourseInMemory shed;
  CHECK(shed.run({"course", "--list", "--key", "E", "--key", "Bb dorian", "--as", "pdf,mxl"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  CHECK(shed.console.out.substr(0, shed.console.out.find('\n', shed.console.out.find('\n') + 1)) ==
        "fretsheaf sheaf course --key E --key 'Bb dorian' --as pdf,mxl --quiet --only one.e-dorian\n"
        "fretsheaf sheaf course --key E --key 'Bb dorian' --as pdf,mxl --quiet --only one.b-flat-dorian");
  CHECK(shed.outputs().empty());
  CHECK_FALSE(shed.system.files.contains("course/.fretsheaf/lock"));
  CHECK(shed.run({"course", "--only", "unit/three.e-dorian"}) == Exit::done);
  CHECK(shed.summary() == "made 1, up to date 0, failed 0");
  CHECK(names(shed.outputs()) == std::vector<std::string>{"course/unit/three.e-dorian.pdf"});
  CHECK(shed.run({"course", "--only", "unit/three.e-dorian"}) == Exit::done);
  CHECK(shed.summary() == "made 0, up to date 1, failed 0");
  shed.run({"course"});
  CHECK(shed.summary() == "made 5, up to date 1, failed 0");
  CHECK(shed.system.list("course/.fretsheaf") == std::vector<std::string>{"lock", "record"});
}

TEST_CASE("a word of a listed command is quoted as a shell needs it") {
  CHECK(command::shell_word("unit-1/low-tide.d-dorian") == "unit-1/low-tide.d-dorian");
  CHECK(command::shell_word("") == "''");
  CHECK(command::shell_word("it's a tide") == "'it'\\''s a tide'");
  CHECK(command::shell_word("$(x)") == "'$(x)'");
}

TEST_CASE("shares make the course together, each with a record of its own that a whole run takes over") {
  CourseInMemory whole;
  whole.run({"course"});
  CourseInMemory shed;
  std::size_t made = 0;
  for (const char* share : {"1/3", "2/3", "3/3"}) {
    const std::size_t before = shed.outputs().size();
    CHECK(shed.run({"course", "--share", share}) == Exit::done);
    CHECK(shed.summary() == "made 2, up to date 0, failed 0");
    made += shed.outputs().size() - before;
  }
  CHECK(made == 6);
  CHECK(shed.outputs() == whole.outputs());
  CHECK(shed.system.list("course/.fretsheaf") ==
        std::vector<std::string>{"lock", "share-1-of-3.lock", "share-1-of-3.record", "share-2-of-3.lock",
                                 "share-2-of-3.record", "share-3-of-3.lock", "share-3-of-3.record"});
  shed.run({"course", "--share", "2/3"});
  CHECK(shed.summary() == "made 0, up to date 2, failed 0");
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
  CHECK(shed.system.list("course/.fretsheaf") == std::vector<std::string>{"lock", "record"});
}

TEST_CASE("a folder in which a run goes on is refused") {
  CourseInMemory shed;
  auto hold = shed.system.lock("course/.fretsheaf/lock", platform::Sharing::alone);
  CHECK(shed.run({"course"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "fretsheaf: error: course: another run is making handouts here; wait until it has ended, or stop it\n");
  CHECK(shed.run({"course", "--share", "1/2"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "fretsheaf: error: course: a run of the whole course is making handouts here; wait until "
        "it has ended, or stop it\n");
  CHECK(shed.run({"course", "--only", "one.d-dorian"}) == Exit::unreadable);
  CHECK(shed.run({"course", "--list"}) == Exit::done);
  CHECK(shed.outputs().empty());
  hold = platform::InUse{};
  auto share = shed.system.lock("course/.fretsheaf/lock", platform::Sharing::with_others);
  auto own = shed.system.lock("course/.fretsheaf/share-1-of-2.lock", platform::Sharing::alone);
  CHECK(shed.run({"course", "--share", "1/2"}) == Exit::unreadable);
  CHECK(shed.console.errors ==
        "fretsheaf: error: course: another run is making share 1/2 here; wait until it has ended, or stop it\n");
  CHECK(shed.run({"course"}) == Exit::unreadable);
  CHECK(shed.run({"course", "--share", "2/2"}) == Exit::done);
  CHECK(shed.run({"course", "--only", "one.d-dorian"}) == Exit::done);
}

TEST_CASE("what cannot be written is said, and the others are made") {
  CourseInMemory shed;
  shed.system.write_failures["course/one.d-dorian.pdf"] = {platform::FileError::Kind::other,
                                                           "cannot be written: the disk is full"};
  CHECK(shed.run({"course"}) == Exit::unreadable);
  CHECK(shed.console.errors.find("fretsheaf: error: course/one.d-dorian.pdf: cannot be written: the disk is full\n") ==
        0);
  CHECK(shed.summary() == "made 5, up to date 0, failed 1");
  shed.system.write_failures.clear();
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.summary() == "made 1, up to date 5, failed 0");
}

TEST_CASE("a record that cannot be written spoils no handout") {
  CourseInMemory shed;
  for (const char* name : {"record", "journal"}) {
    shed.system.write_failures[std::string("course/.fretsheaf/") + name] = {platform::FileError::Kind::other,
                                                                            "cannot be written: the disk is full"};
  }
  CHECK(shed.run({"course"}) == Exit::unreadable);
  CHECK(shed.console.errors.find("fretsheaf: error: course/.fretsheaf: cannot be written: the disk is full\n") !=
        std::string::npos);
  CHECK(shed.summary() == "made 6, up to date 0, failed 0");
  const auto made = shed.outputs();
  shed.system.write_failures.clear();
  CHECK(shed.run({"course"}) == Exit::done);
  CHECK(shed.outputs() == made);
  CHECK(shed.system.files.contains(record));
}

TEST_CASE("a lesson that vanished between looking and reading is said, and the others are made") {
  CourseInMemory shed;
  shed.system.read_failures["course/two.lesson.toml"] = {platform::FileError::Kind::missing, "is not there"};
  CHECK(shed.run({"course"}) == Exit::unreadable);
  CHECK(shed.console.errors.find("fretsheaf: error: course/two.lesson.toml: is not there") == 0);
  CHECK(shed.summary() == "made 4, up to date 0, failed 1");
}

TEST_CASE("a key that does not fit the modes of a course names the lessons that it does not fit, the first of many") {
  CourseInMemory shed;
  const auto in = [&](const std::string& name, const std::string& key) {
    std::string lesson = course_lesson(3, "[]");
    lesson.replace(lesson.find("D dorian"), 8, key);
    shed.system.files["course/" + name + ".lesson.toml"] = lesson;
  };
  in("air", "D minor");
  in("bell", "A minor");
  for (const char* name : {"one", "two", "unit/three", "unit/four"}) in(name, "G major");
  CHECK(shed.run({"course", "--key", "D minor"}) == Exit::request_wrong);
  CHECK(shed.console.errors ==
        "fretsheaf: error: course/one.lesson.toml, course/two.lesson.toml, course/unit/four.lesson.toml and 1 more: "
        "--key D minor: this lesson is in G major, and a move keeps the mode: in minor it would be another tune; write "
        "\"D major\"\n");
  in("one", "G mixolydian");
  CHECK(shed.run({"course", "--key", "D minor"}) == Exit::request_wrong);
  CHECK(
      shed.console.errors ==
      "fretsheaf: error: course/one.lesson.toml: --key D minor: this lesson is in G mixolydian, and a move keeps the "
      "mode: in minor it would be another tune; write \"D mixolydian\"\n"
      "fretsheaf: error: course/two.lesson.toml, course/unit/four.lesson.toml, course/unit/three.lesson.toml: --key D "
      "minor: this lesson is in G major, and a move keeps the mode: in minor it would be another tune; write \"D "
      "major\"\n");
  CHECK(shed.outputs().empty());
}

TEST_CASE("a command line that is wrong for the course is refused, and nothing is written") {
  const auto [words, what] = GENERATE(table<std::vector<std::string>, std::string>({
      {{"course", "--key", "H"},
       "course/one.lesson.toml, course/two.lesson.toml, course/unit/three.lesson.toml: --key H: 'H' is no key; did you "
       "mean 'B dorian'?"},
      {{"course", "--key", "E minor"},
       "course/one.lesson.toml, course/two.lesson.toml, course/unit/three.lesson.toml: --key E minor: this lesson is "
       "in "
       "D dorian, and a move keeps the mode: in minor it would be another tune; write \"E dorian\""},
      {{"course", "--as", "pfd"}, "--as pfd: there is no such format; it takes pdf, svg, musicxml and mxl"},
      {{"course", "--jobs", "0"}, "--jobs 0: write how many at a time, 1 to 1000"},
      {{"course", "--jobs", "two"}, "--jobs two: write how many at a time, 1 to 1000"},
      {{"course", "--share", "3/2"}, "--share 3/2: write which share of how many, as in --share 2/8"},
      {{"course", "--share", "2"}, "--share 2: write which share of how many, as in --share 2/8"},
      {{"course", "--share", "1/2", "--prune"},
       "--prune and --share: a share does not know what is gone; prune in a whole run"},
      {{"course", "--only", "one.d-dorian", "--prune"},
       "--prune and --only: a single job does not know what is gone; prune in a whole run"},
      {{"course", "--only", "one.d-dorian", "--share", "1/2"}, "--share and --only: choose one of them"},
      {{"course", "--quiet", "--json"}, "--quiet and --json: choose one of them"},
      {{"course", "--list", "--json"}, "--list and --json: choose one of them"},
      {{"course", "--only", "ome.d-dorian"}, "--only ome.d-dorian: there is no such job; did you mean one of 'one'?"},
      {{"course", "--only", "one.f-dorian"},
       "--only one.f-dorian: there is no such job; fretsheaf sheaf --list prints them all"},
  }));
  CourseInMemory shed;
  CAPTURE(words);
  CHECK(shed.run(words) == Exit::request_wrong);
  if (!what.empty()) CHECK(shed.console.errors == "fretsheaf: error: " + what + "\n");
  CHECK(shed.console.errors.find("fretsheaf: error: ") == 0);
  CHECK(shed.outputs().empty());
}

TEST_CASE("a quiet run says what is wrong and nothing else") {
  CourseInMemory shed;
  CHECK(shed.run({"course", "--quiet"}) == Exit::done);
  CHECK(shed.console.errors.empty());
  CHECK(shed.console.out.empty());
  shed.system.files["course/one.lesson.toml"] += "unknown = 1\n";
  CHECK(shed.run({"course", "--quiet"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors.find("course/one.lesson.toml:10:1: error: ") == 0);
  CHECK(shed.console.errors.find("made") == std::string::npos);
}

TEST_CASE("a run can be given as one document") {
  CourseInMemory shed;
  shed.system.files["course/one.lesson.toml"] += "unknown = 1\n";
  CHECK(shed.run({"course", "--json"}) == Exit::lesson_wrong);
  CHECK(shed.console.errors.empty());
  const auto document = nlohmann::json::parse(shed.console.out);
  CHECK(document.at("version") == 1);
  CHECK(document.at("made") == 4);
  CHECK(document.at("up-to-date") == 0);
  CHECK(document.at("failed") == 1);
  CHECK(document.at("stopped") == false);
  CHECK(document.at("files").size() == 4);
  CHECK(document.at("files").at(0) == "course/two.d-dorian.pdf");
  const auto& finding = document.at("findings").at(0);
  CHECK(finding.at("file") == "course/one.lesson.toml");
  CHECK(finding.at("severity") == "error");
  CHECK(finding.at("range").at("start").at("line") == 10);
}

TEST_CASE("a journal that a kill left is taken over, whatever its last line is worth") {
  CourseInMemory shed;
  shed.run({"course"});
  std::string journal = shed.system.files.at(record);
  shed.system.files.erase(record);
  journal.resize(journal.size() - 7);
  shed.system.files["course/.fretsheaf/journal"] = journal;
  shed.run({"course"});
  CHECK(shed.summary() == "made 1, up to date 5, failed 0");
  shed.run({"course"});
  CHECK(shed.summary() == "made 0, up to date 6, failed 0");
}

TEST_CASE("a course removes the SVG pages of an earlier, longer handout") {
  CourseInMemory shed;
  shed.run({"course", "--as", "svg"});
  shed.system.files["course/one.d-dorian.p2.svg"] = "an old page";
  shed.system.files["course/one.lesson.toml"] = course_lesson(9);
  shed.run({"course", "--as", "svg"});
  CHECK_FALSE(shed.system.files.contains("course/one.d-dorian.p2.svg"));
  CHECK(shed.system.files.contains("course/one.d-dorian.p1.svg"));
}

TEST_CASE("a journal that a kill left without a whole first line is begun anew") {
  CourseInMemory shed;
  shed.system.files["course/.fretsheaf/only.journal"] = "fretsh";
  shed.run({"course", "--only", "one.d-dorian"});
  shed.run({"course", "--only", "two.d-dorian"});
  CHECK(shed.system.files.at("course/.fretsheaf/only.journal").find("fretsheaf record 1\n") == 0);
  shed.run({"course"});
  CHECK(shed.summary() == "made 4, up to date 2, failed 0");
}
