#include "command/progress.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::command;

TEST_CASE("a bar has count, rate and time left") {
  CHECK(progress_bar(0, 1200, 0.5) == "[........................] 0 of 1200");
  CHECK(progress_bar(480, 1200, 17.8) == "[|||||||||...............] 480 of 1200, 27 a second, 27 s left");
  CHECK(progress_bar(1, 10'000, 1.0) == "[........................] 1 of 10000, 1 a second, 2 h 46 min left");
  CHECK(progress_bar(12, 12, 3.0) == "[||||||||||||||||||||||||] 12 of 12, 4 a second");
}

TEST_CASE("a time is in words") {
  CHECK(in_words(0.2) == "0 s");
  CHECK(in_words(59.4) == "59 s");
  CHECK(in_words(725) == "12 min 5 s");
  CHECK(in_words(8040) == "2 h 14 min");
}

TEST_CASE("in a pipe a line is said at each tenth, with --quiet or --json none") {
  Console console;
  Progress shown(Progress::Manner::shown, console);
  for (std::size_t done = 0; done <= 40; ++done) shown.progress(done, 40);
  CHECK(console.errors.substr(0, 32) == "4 of 40 done\n8 of 40 done\n12 of ");
  CHECK(std::count(console.errors.begin(), console.errors.end(), '\n') == 10);
  CHECK(console.errors.find('\r') == std::string::npos);
  for (const auto manner : {Progress::Manner::messages_alone, Progress::Manner::nothing}) {
    Console silent;
    Progress progress(manner, silent);
    progress.progress(20, 40);
    CHECK(silent.errors.empty());
  }
}

TEST_CASE("on a terminal a message stands above the bar") {
  Console console;
  console.errors_are_terminal = true;
  Progress progress(Progress::Manner::shown, console);
  progress.progress(0, 2);
  progress.say({}, {"a.pdf: cannot be written: the disk is full"});
  progress.progress(2, 2);
  progress.end();
  const std::string clear = "\r\x1b[K";
  const std::string bar = "[........................] 0 of 2";
  const std::string begin =
      bar + clear + "fretsheaf: error: a.pdf: cannot be written: the disk is full\n" + bar + clear + "[||||";
  CHECK(console.errors.substr(0, begin.size()) == begin);
  CHECK(console.errors.ends_with(clear));
}
