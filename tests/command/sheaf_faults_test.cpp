// A run that is hurt: after each fault every output is the old or the new one, whole, and the next run puts all right.
#include <sys/mount.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <thread>

#include "command/course_on_disk.h"
#include "support/dice.h"

using namespace fretsheaf;
using test::CourseOnDisk;
using test::Running;

namespace {

using Files = std::map<std::string, std::string>;

// How often a run is killed; the slow checks ask for more.
int kills() {
  const char* asked = std::getenv("FRETSHEAF_KILLS");
  return asked == nullptr ? 8 : std::atoi(asked);
}

// Outputs that are neither the old nor the new ones.
std::string broken(const Files& now, const Files& old, const Files& next) {
  std::string found;
  for (const auto& [path, bytes] : now) {
    const auto is = [&, &name = path, &content = bytes](const Files& files) {
      const auto file = files.find(name);
      return file != files.end() && file->second == content;
    };
    if (!is(old) && !is(next)) found += path + "\n";
  }
  return found;
}

// What a run makes of each version of the course.
Files version(CourseOnDisk& course, int number) {
  course.write(number);
  const std::string to = "version-" + std::to_string(number);
  REQUIRE(course.run("course --quiet --to " + to) == 0);
  return course.files(to);
}

}  // namespace

TEST_CASE("killed at any moment, a run leaves each output whole, old or new, and the next puts all right") {
  CourseOnDisk course(10);
  const auto begin = std::chrono::steady_clock::now();
  const Files first = version(course, 1);
  const auto took = std::chrono::steady_clock::now() - begin;
  const Files second = version(course, 2);
  REQUIRE(course.run("course --quiet --to out") == 0);
  REQUIRE(course.files("out") == second);
  test::Dice dice(2026);
  for (int i = 0; i < kills(); ++i) {
    const bool to_first = i % 2 == 0;
    course.write(to_first ? 1 : 2);
    {
      Running run({"sheaf", "course", "--to", "out", "--jobs", "2"}, course.path(), course / "said");
      std::this_thread::sleep_for(took * dice.below(1000) / 1000);
      run.signal(SIGKILL);
      run.wait();
    }
    CAPTURE(i);
    CHECK(broken(course.files("out"), first, second) == "");
    REQUIRE(course.run("course --quiet --to out") == 0);
    REQUIRE(course.files("out") == (to_first ? first : second));
    CHECK(course.leftovers("out") == "");
  }
}

TEST_CASE("what was made before a kill is not made again") {
  CourseOnDisk course(30);
  Running run({"sheaf", "course", "--to", "out", "--jobs", "2"}, course.path(), course / "said");
  // So many lines are in the journal that some handouts are.
  for (int i = 0; i < 30'000 && bytes_of(course / "out/.fretsheaf/journal").find("\nmade\t") == std::string::npos;
       ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  run.signal(SIGKILL);
  run.wait();
  std::string said;
  CHECK(course.run("course --to out", &said) == 0);
  CHECK(said.find("up to date 0,") == std::string::npos);
  CHECK(course.files("out").size() == 120);
}

TEST_CASE("on a full disk the handouts that fit are made, none is broken, and with room the next run makes the rest") {
  CourseOnDisk course(10);
  const Files first = version(course, 1);
  const Files second = version(course, 2);
  std::filesystem::create_directory(course / "out");
  // A disk of 256 kB, in a name space of its own where nobody but root may mount.
  const std::string disk = "mount -t tmpfs -o size=256k,nr_inodes=200 none out";
  const std::string room = "mount -o remount,size=64m out";
  const std::string save = "mkdir -p saved && cp -r out/. saved/";
  const std::string run = "fretsheaf sheaf course --to out";
  std::string said;
  const std::string story =
      disk + " && { " + run + "; echo \"status $?\"; " + save + "; " + room + "; " + run +
      " --quiet; echo \"status $?\"; rm -rf later; mkdir later; cp -r out/. later/; umount out; }";
  const std::string alone = ::geteuid() == 0 ? "unshare -m" : "unshare -rm";
  put(course / "story", story);
  REQUIRE(test::shell(alone + " sh story", course.path(), &said) == 0);
  CHECK(said.find("cannot be written: the disk is full\n") != std::string::npos);
  CHECK(said.find("\nstatus 3\n") != std::string::npos);
  CHECK(said.ends_with("status 0\n"));
  CHECK(broken(course.files("saved"), first, second) == "");
  CHECK(course.files("saved").size() < second.size());
  CHECK(course.files("later") == second);
  CHECK(course.leftovers("later") == "");
}

TEST_CASE("in a folder where nobody may write nothing happens, and it is said") {
  const CourseOnDisk course(2);
  std::filesystem::permissions(course / "course", std::filesystem::perms(0555));
  const std::string told = as_ordinary_user([&] {
    platform::DiskSystem disk;
    command::Console console;
    const auto exit = command::run({"sheaf", course / "course"}, disk, console);
    return std::to_string(static_cast<int>(exit)) + " " + console.errors;
  });
  CHECK(told ==
        "3 fretsheaf: error: " + (course / "course/.fretsheaf/lock") + ": cannot be written: you have no permission\n");
}

TEST_CASE("a handout that a teacher locked stays, and the others are made") {
  const CourseOnDisk course(2);
  std::filesystem::permissions(course / "course", std::filesystem::perms(0777));
  for (const char* unit : {"course/unit-0", "course/unit-1"}) {
    std::filesystem::permissions(course / unit, std::filesystem::perms(0777));
  }
  put(course / "course/unit-0/lesson-0.d-dorian.pdf", "locked");
  std::filesystem::permissions(course / "course/unit-0/lesson-0.d-dorian.pdf", std::filesystem::perms(0444));
  const std::string told = as_ordinary_user([&] {
    platform::DiskSystem disk;
    command::Console console;
    const auto exit = command::run({"sheaf", course / "course"}, disk, console);
    return std::to_string(static_cast<int>(exit)) + " " + console.errors;
  });
  CHECK(told.find("3 ") == 0);
  CHECK(told.find("fretsheaf: error: " + (course / "course/unit-0/lesson-0.d-dorian.pdf") +
                  ": cannot be written: you have no permission\n") != std::string::npos);
  CHECK(told.find("made 7, up to date 0, failed 1, in ") != std::string::npos);
  CHECK(bytes_of(course / "course/unit-0/lesson-0.d-dorian.pdf") == "locked");
}

TEST_CASE("a lesson that vanishes while a run goes on harms no other") {
  CourseOnDisk course(30);
  Running run({"sheaf", "course", "--to", "out", "--jobs", "2"}, course.path(), course / "said");
  for (int i = 0; i < 30'000 && !std::filesystem::exists(course / "out/.fretsheaf/journal"); ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  // The last that would be made.
  std::filesystem::remove(course / "course/unit-1/lesson-9.lesson.toml");
  CHECK(run.wait() == 3);
  CHECK(bytes_of(course / "said").find("course/unit-1/lesson-9.lesson.toml: is not there") != std::string::npos);
  CHECK(course.files("out").size() == 116);
  std::string said;
  CHECK(course.run("course --to out", &said) == 0);
  CHECK(said.find("made 0, up to date 116, failed 0") == 0);
}

TEST_CASE("a clock that was set back misleads nobody") {
  CourseOnDisk course(4);
  const Files first = version(course, 1);
  const Files second = version(course, 2);
  REQUIRE(course.run("course --quiet --to out") == 0);
  // As if all had been made tomorrow.
  REQUIRE(test::shell("find out course -exec touch -d tomorrow {} +", course.path()) == 0);
  std::string said;
  CHECK(course.run("course --to out", &said) == 0);
  CHECK(said.find("made 0, up to date 16, failed 0") == 0);
  // A lesson that is edited now is older than its handouts.
  course.write(1);
  CHECK(course.run("course --to out", &said) == 0);
  CHECK(course.files("out") == first);
  // And one that comes from long ago.
  course.write(2);
  REQUIRE(test::shell("find course -exec touch -d 1999-12-31 {} +", course.path()) == 0);
  CHECK(course.run("course --quiet --to out") == 0);
  CHECK(course.files("out") == second);
}
