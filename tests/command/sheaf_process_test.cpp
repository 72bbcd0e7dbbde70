// Whole courses by the program itself: worker processes, locks, signals, terminals, several runs at once.
#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <thread>

#include "command/course_on_disk.h"

using namespace fretsheaf;
using test::CourseOnDisk;
using test::Running;

namespace {

void wait_a_little() {
  std::this_thread::sleep_for(std::chrono::milliseconds(2));
}

// Waits until a run has written something into a file.
void wait_for(const std::string& path) {
  const auto has_something = [&] {
    std::error_code missing;
    const auto size = std::filesystem::file_size(path, missing);
    return !missing && size > 0;
  };
  for (int i = 0; i < 30'000 && !has_something(); ++i) wait_a_little();
}

// Waits until a file has grown.
void wait_for_more(const std::string& path) {
  const auto before = std::filesystem::file_size(path);
  for (int i = 0; i < 30'000 && std::filesystem::file_size(path) == before; ++i) wait_a_little();
}

}  // namespace

TEST_CASE("any number of worker processes gives the same bytes") {
  const CourseOnDisk course;
  CHECK(course.run("course --to one --jobs 1") == 0);
  CHECK(course.run("course --to three --jobs 3") == 0);
  const auto made = course.files("one");
  CHECK(made.size() == 24);
  CHECK(made == course.files("three"));
  std::string said;
  CHECK(course.run("course --to three", &said) == 0);
  CHECK(said.find("made 0, up to date 24, failed 0, in ") == 0);
}

TEST_CASE("a lesson from the folder that is the current one, above or below it is the same lesson") {
  const CourseOnDisk course(2);
  CHECK(course.run("course") == 0);
  std::string said;
  for (const char* line : {"cd course && fretsheaf sheaf", "cd course/unit-0 && fretsheaf sheaf ..",
                           "fretsheaf sheaf \"$PWD/course\"", "fretsheaf sheaf course/../course/"}) {
    CAPTURE(line);
    CHECK(test::shell(line, course.path(), &said) == 0);
    CHECK(said.find("made 0, up to date 8, failed 0") != std::string::npos);
  }
}

TEST_CASE("a second run on the folder is refused while the first goes on, and not when that was killed") {
  const CourseOnDisk course(100);
  std::string said;
  {
    Running first({"sheaf", "course", "--jobs", "1"}, course.path(), course / "said");
    wait_for(course / "course/.fretsheaf/journal");
    CHECK(course.run("course", &said) == 3);
    CHECK(said ==
          "fretsheaf: error: course: another run is making handouts here; wait until it has ended, or stop it\n");
    first.signal(SIGKILL);
    CHECK(first.wait() == -1 - SIGKILL);
  }
  CHECK(course.run("course/unit-0 --to course --share 1/9", &said) == 0);
}

TEST_CASE("Ctrl-C ends a run, with every output whole, and the next goes on from there") {
  constexpr int lessons = 300;  // more than are made before the signal comes, also on a machine that is busy
  const CourseOnDisk course(lessons);
  Running run({"sheaf", "course", "--jobs", "2"}, course.path(), course / "said");
  wait_for(course / "course/.fretsheaf/journal");
  wait_for_more(course / "course/.fretsheaf/journal");  // its heading may stand there alone
  run.signal(SIGINT);
  CHECK(run.wait() == 130);
  const std::string said = bytes_of(course / "said");
  CHECK(said.find("stopped; what is done is kept, and the next run goes on from there\nmade ") != std::string::npos);
  CHECK(course.leftovers("course").empty());
  const auto partly = course.files("course");
  std::string later;
  CHECK(course.run("course", &later) == 0);
  CHECK(later.find("up to date 0,") == std::string::npos);
  const auto all = course.files("course");
  CHECK(all.size() == lessons + 4 * lessons);
  CHECK(partly.size() < all.size());
  for (const auto& [path, bytes] : partly) {
    CAPTURE(path);
    CHECK(all.at(path) == bytes);
  }
}

TEST_CASE("a worker that is killed costs the lesson that it was at, and the next run makes it") {
  const CourseOnDisk course(100);
  Running run({"sheaf", "course", "--jobs", "2"}, course.path(), course / "said");
  wait_for(course / "course/.fretsheaf/journal");
  const std::vector<pid_t> workers = test::children_of(run.process());
  REQUIRE(workers.size() == 2);
  // It is stopped first, and killed when the other has brought something: by then it surely has a lesson, whose making
  // ends with it. Killed between two lessons, it would cost none.
  ::kill(workers.front(), SIGSTOP);
  wait_for_more(course / "course/.fretsheaf/journal");
  ::kill(workers.front(), SIGKILL);
  CHECK(run.wait() == 3);
  const std::string said = bytes_of(course / "said");
  CHECK(said.find(".lesson.toml: the process that made it ended by signal 9\n") != std::string::npos);
  CHECK(course.run("course") == 0);
  CHECK(course.files("course").size() == 100 + 400);
  CHECK(course.leftovers("course").empty());
}

// What it keeps between runs lies in the home folder else, where two that begin at once get in each other's way.
const std::string with_own_cache = "PARALLEL_HOME=$PWD/parallel-cache ";

TEST_CASE("shares that GNU parallel runs into one folder come to the bytes of one run") {
  const CourseOnDisk course;
  CHECK(course.run("course --to one") == 0);
  std::string said;
  CHECK(test::shell(with_own_cache + "parallel -j4 fretsheaf sheaf course --to many --quiet --share {}/4 ::: 1 2 3 4",
                    course.path(), &said) == 0);
  CHECK(said == "");
  CHECK(course.files("many") == course.files("one"));
  CHECK(course.run("course --to many", &said) == 0);
  CHECK(said.find("made 0, up to date 24, failed 0") == 0);
}

TEST_CASE("the commands that --list prints, run by GNU parallel, come to the bytes of one run") {
  const CourseOnDisk course(3);
  put(course / "course/it's a $HOME.lesson.toml", test::course_lesson(4));
  CHECK(course.run("course --to one") == 0);
  std::string said;
  CHECK(test::shell("fretsheaf sheaf course --to many --list | " + with_own_cache + "parallel -j3", course.path(),
                    &said) == 0);
  CHECK(said == "");
  CHECK(course.files("many").size() == 14);
  CHECK(course.files("many") == course.files("one"));
  CHECK(course.run("course --to many", &said) == 0);
  CHECK(said.find("made 0, up to date 14, failed 0") == 0);
}

TEST_CASE("on a terminal a bar shows how far it is, in a pipe lines do") {
  const CourseOnDisk course;
  const std::string shown = test::on_terminal({"sheaf", "course", "--to", "a"}, course.path());
  CHECK(shown.find("[........................] 0 of 24") != std::string::npos);
  CHECK(shown.find("\r\x1b[K[||||||||||||||||||||||||] 24 of 24, ") != std::string::npos);
  CHECK(shown.find("\r\x1b[Kmade 24, up to date 0, failed 0, in ") != std::string::npos);
  CHECK(test::on_terminal({"sheaf", "course", "--to", "b", "--quiet"}, course.path()).empty());
  std::string said;
  CHECK(course.run("course --to c", &said) == 0);
  CHECK(said.find('\r') == std::string::npos);
  CHECK(said.find("24 of 24 done\nmade 24, up to date 0, failed 0, in ") != std::string::npos);
}
