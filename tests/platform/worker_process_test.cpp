#include "platform/worker_process.h"

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <thread>

#include "platform/disk_system.h"
#include "platform/stop_signals.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;

namespace {

std::string twice(std::string_view text) {
  return std::string(text) + std::string(text);
}

}  // namespace

TEST_CASE("a worker answers what it is sent, of any length, from a process of its own") {
  auto worker = WorkerProcess::start(
      [](std::string_view message) { return message == "who" ? std::to_string(::getpid()) : twice(message); });
  REQUIRE(worker);
  REQUIRE(worker->send("tide"));
  CHECK(worker->receive() == "tidetide");
  const std::string large(3'000'000, 'x');
  REQUIRE(worker->send(large));
  CHECK(worker->receive() == large + large);
  REQUIRE(worker->send(""));
  CHECK(worker->receive() == "");
  REQUIRE(worker->send("who"));
  CHECK(worker->receive() != std::to_string(::getpid()));
  CHECK(worker->end() == "was stopped");
}

TEST_CASE("a worker that breaks says how it ended") {
  auto killed = WorkerProcess::start([](std::string_view) {
    std::signal(SIGSEGV, SIG_DFL);
    std::raise(SIGSEGV);
    return std::string();
  });
  REQUIRE(killed->send("x"));
  CHECK_FALSE(killed->receive());
  CHECK(killed->end() == "ended by signal 11");
  auto left = WorkerProcess::start([](std::string_view) -> std::string { ::_exit(3); });
  REQUIRE(left->send("x"));
  CHECK_FALSE(left->receive());
  CHECK(left->end() == "ended with status 3");
}

TEST_CASE("those workers are readable that have answered") {
  auto fast = WorkerProcess::start(twice);
  auto idle = WorkerProcess::start(twice);
  const std::vector<int> both = {fast->descriptor(), idle->descriptor()};
  CHECK(readable(both, 0).empty());
  REQUIRE(fast->send("x"));
  CHECK(readable(both, 10'000) == std::vector<int>{fast->descriptor()});
}

TEST_CASE("a worker keeps no lock of its parent, and ignores the keyboard's signal") {
  const TemporaryFolder folder;
  DiskSystem disk;
  auto hold = disk.lock(folder / "lock", Sharing::alone);
  auto worker = WorkerProcess::start([](std::string_view) {
    std::raise(SIGINT);
    return std::string("still here");
  });
  REQUIRE(worker->send("x"));
  CHECK(worker->receive() == "still here");
  hold = InUse{};
  CHECK(std::holds_alternative<std::unique_ptr<Hold>>(disk.lock(folder / "lock", Sharing::alone)));
}

TEST_CASE("a worker ends with its parent, even when that is killed") {
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  const pid_t parent = ::fork();
  if (parent == 0) {
    auto worker = WorkerProcess::start([](std::string_view) { return std::to_string(::getpid()); });
    worker->send("who");
    const std::string who = worker->receive().value_or("");
    if (::write(ends[1], who.data(), who.size()) < 0) ::_exit(1);
    ::pause();
  }
  std::array<char, 20> who{};
  REQUIRE(::read(ends[0], who.data(), who.size()) > 0);
  const pid_t worker = std::stoi(std::string(who.data()));
  CHECK(::kill(worker, 0) == 0);
  ::kill(parent, SIGKILL);
  ::waitpid(parent, nullptr, 0);
  // Gone, or waiting to be buried by whoever took it in.
  const auto gone = [&] {
    return ::kill(worker, 0) != 0 ||
           bytes_of("/proc/" + std::to_string(worker) + "/stat").find(") Z ") != std::string::npos;
  };
  for (int i = 0; i < 500 && !gone(); ++i) std::this_thread::sleep_for(std::chrono::milliseconds(10));
  CHECK(gone());
  ::close(ends[0]);
  ::close(ends[1]);
}

TEST_CASE("a signal to stop is heard and ends nothing") {
  StopSignals signals;
  CHECK_FALSE(signals.came());
  std::raise(SIGINT);
  const std::vector<int> both = {signals.descriptor()};
  CHECK(readable(both, 10'000) == both);
  CHECK(signals.came());
  CHECK(signals.came());
}

TEST_CASE("a signal that was ignored stays ignored") {
  std::signal(SIGHUP, SIG_IGN);
  StopSignals signals;
  std::raise(SIGHUP);
  CHECK_FALSE(signals.came());
}
