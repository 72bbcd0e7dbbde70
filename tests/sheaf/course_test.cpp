#include "sheaf/course.h"

#include <catch2/catch.hpp>
#include <filesystem>

#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using sheaf::Course;

namespace {

Course course_of(const std::string& folder, const std::string& to, const platform::Machine& system) {
  auto found = sheaf::find_course(folder, to, system);
  if (const auto* none = std::get_if<sheaf::NoCourse>(&found)) FAIL(none->why);
  return std::get<Course>(std::move(found));
}

std::string why_not(const std::string& folder, const std::string& to, const platform::Machine& system) {
  const auto found = sheaf::find_course(folder, to, system);
  const auto* none = std::get_if<sheaf::NoCourse>(&found);
  if (none == nullptr) return "a course";
  return (none->is_request_wrong ? "request: " : "") + none->why;
}

// Where each lesson's handouts go: "LESSON > HANDOUTS".
std::vector<std::string> ways(const Course& course) {
  std::vector<std::string> all;
  for (const auto& lesson : course.lessons) all.push_back(lesson.path + " > " + lesson.handouts);
  return all;
}

using Ways = std::vector<std::string>;

}  // namespace

TEST_CASE("every lesson below the folder, by name, but not what begins with a dot") {
  platform::MemorySystem system;
  for (const char* path :
       {"course/b.lesson.toml", "course/a/z.lesson.toml", "course/.trash/x.lesson.toml", "course/.lesson.toml",
        "course/notes.toml", "course/a/z.d-dorian.pdf", "other.lesson.toml"}) {
    system.files[path] = "";
  }
  const Course course = course_of("course/", "", system);
  CHECK(ways(course) == Ways{"course/a/z.lesson.toml > course/a/z", "course/b.lesson.toml > course/b"});
  CHECK(course.lessons[0].job == "a/z");
  CHECK(course.lessons[0].name == "a/z.lesson.toml");
  CHECK(course.places.root() == "course");
}

TEST_CASE("handouts go to --to, in the lesson's folders again") {
  platform::MemorySystem system;
  system.files["course/a/z.lesson.toml"] = "";
  system.files["course/b.lesson.toml"] = "";
  const Course course = course_of("course", "out", system);
  CHECK(ways(course) == Ways{"course/a/z.lesson.toml > out/a/z", "course/b.lesson.toml > out/b"});
  CHECK(course.lessons[0].name == "../course/a/z.lesson.toml");
  CHECK(course.lessons[0].recorded_handouts == "a/z");
}

TEST_CASE("handouts go where the nearest sheaf.toml says, from whichever folder a run is started") {
  platform::MemorySystem system;
  system.files["course/sheaf.toml"] = "[output]\nfolder = \"handouts\"\n";
  system.files["course/a/z.lesson.toml"] = "";
  system.files["course/b/sheaf.toml"] = "[output]\nfolder = \"printed\"\n";
  system.files["course/b/y.lesson.toml"] = "";
  const Course whole = course_of("course", "", system);
  CHECK(ways(whole) ==
        Ways{"course/a/z.lesson.toml > course/handouts/a/z", "course/b/y.lesson.toml > course/b/printed/y"});
  CHECK(whole.places.root() == "course/handouts");
  CHECK(whole.lessons[0].name == "../a/z.lesson.toml");
  CHECK(whole.lessons[0].sheaf == "../sheaf.toml");
  CHECK(whole.lessons[1].recorded_handouts == "../b/printed/y");
  const Course part = course_of("course/a", "", system);
  CHECK(ways(part) == Ways{"course/a/z.lesson.toml > course/handouts/a/z"});
  CHECK(part.places.root() == "course/handouts");
  CHECK(part.lessons[0].name == whole.lessons[0].name);
  CHECK(part.lessons[0].recorded_handouts == whole.lessons[0].recorded_handouts);
}

TEST_CASE("two lessons with one name for their handouts are refused before anything is made") {
  platform::MemorySystem system;
  system.files["sheaf.toml"] = "[output]\nfolder = \"b\"\n";
  system.files["b/sheaf.toml"] = "";
  system.files["tide.lesson.toml"] = "";
  system.files["b/tide.lesson.toml"] = "";
  CHECK(why_not(".", "", system) ==
        "request: 'tide.lesson.toml' and 'b/tide.lesson.toml' would both be written to 'b/tide.…'; rename one "
        "of them");
  CHECK(why_not(".", "elsewhere", system) == "a course");
}

TEST_CASE("what is no folder is no course") {
  platform::MemorySystem system;
  system.files["a.lesson.toml"] = "";
  CHECK(why_not("gone", "", system) == "gone: is not there");
  CHECK(why_not("a.lesson.toml", "", system) ==
        "request: a.lesson.toml: is no folder; a lesson alone is typeset with: fretsheaf typeset a.lesson.toml");
}

TEST_CASE("a folder that may not be read is an error: its lessons are not gone") {
  const TemporaryFolder folder;
  std::filesystem::create_directories(folder / "course/closed");
  put(folder / "course/closed/tide.lesson.toml", "");
  std::filesystem::permissions(folder / "course/closed", std::filesystem::perms(0));
  CHECK(as_ordinary_user([&] { return why_not(folder / "course", "", platform::DiskSystem()); }) ==
        (folder / "course/closed") + ": cannot be read: you have no permission");
}

TEST_CASE("on the disk, a folder that is a link is not entered, a lesson that is one is read") {
  const TemporaryFolder folder;
  std::filesystem::create_directories(folder / "course/a");
  put(folder / "course/a/tide.lesson.toml", "");
  std::filesystem::create_symlink("..", folder / "course/a/up");
  std::filesystem::create_symlink("a/tide.lesson.toml", folder / "course/ebb.lesson.toml");
  std::filesystem::create_symlink("nowhere", folder / "course/gone.lesson.toml");
  const platform::DiskSystem disk;
  const Course course = course_of(folder / "course", "", disk);
  REQUIRE(course.lessons.size() == 2);
  CHECK(course.lessons[0].name == "a/tide.lesson.toml");
  CHECK(course.lessons[1].name == "ebb.lesson.toml");
}

TEST_CASE("a path is recorded from the record's folder on, and found again") {
  platform::MemorySystem system;
  const sheaf::Places places("course/unit", "course/out", "course", system);
  for (const auto& [path, recorded] :
       std::map<std::string, std::string>{{"course/unit/a.lesson.toml", "../unit/a.lesson.toml"},
                                          {"course/unit/../sheaf.toml", "../sheaf.toml"},
                                          {"course/out/x", "x"},
                                          {"/course/unit/deep/b.lesson.toml", "../unit/deep/b.lesson.toml"},
                                          {"/usr/share/fonts/f.otf", "/usr/share/fonts/f.otf"},
                                          {"elsewhere/logo.svg", "/elsewhere/logo.svg"}}) {
    CAPTURE(path);
    CHECK(places.recorded(path) == recorded);
    CHECK(system.absolute(places.working(recorded)) == system.absolute(path));
  }
  CHECK(places.is_in_folder("../unit/a.lesson.toml"));
  CHECK_FALSE(places.is_in_folder("../unit-2/a.lesson.toml"));
  CHECK_FALSE(places.is_in_folder("a.lesson.toml"));
  const sheaf::Places here(".", ".", ".", system);
  CHECK(here.recorded("a/b.lesson.toml") == "a/b.lesson.toml");
  CHECK(here.recorded("../sheaf.toml") == "sheaf.toml");  // the root of this machine is its own folder above
  const platform::DiskSystem disk;
  CHECK(sheaf::Places(".", ".", ".", disk).recorded("/usr/share/fonts/f.otf") == "/usr/share/fonts/f.otf");
  const sheaf::Places inside("course", "course/out", "course", system);
  CHECK(inside.is_in_folder("../a.lesson.toml"));
  CHECK_FALSE(inside.is_in_folder("../../b.lesson.toml"));
}

TEST_CASE("lessons of the current folder lie in it when the handouts go to another") {
  const platform::DiskSystem disk;
  for (const std::string folder : {".", "./"}) {
    CAPTURE(folder);
    const sheaf::Places places(folder, "out", folder, disk);
    CHECK(places.recorded(folder) == "..");
    CHECK(places.is_in_folder("../a.lesson.toml"));
    CHECK(places.is_in_folder("../unit/b.lesson.toml"));
    CHECK_FALSE(places.is_in_folder("../../b.lesson.toml"));
  }
  const sheaf::Places above("..", "out", "..", disk);
  CHECK(above.is_in_folder("../../b.lesson.toml"));
}
