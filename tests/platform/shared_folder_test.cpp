// What several runs on one folder need of the machine: locks, files that grow, stale temporary files swept.
#include <fcntl.h>
#include <sys/file.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <filesystem>
#include <string>

#include "platform/disk_system.h"
#include "platform/loaded_library.h"
#include "platform/memory_system.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;
using Names = std::vector<std::string>;

namespace {

std::string said(const Lock& lock) {
  if (const auto* failed = std::get_if<FileError>(&lock)) return failed->what;
  return std::holds_alternative<InUse>(lock) ? "is in use" : "held";
}

std::string said(const std::optional<FileError>& result) {
  return result ? result->what : "done";
}

Names lock_story(Machine& system, const std::string& path) {
  Names told;
  {
    const auto first = system.lock(path, Sharing::with_others);
    const auto second = system.lock(path, Sharing::with_others);
    told.push_back(said(first) + said(second) + said(system.lock(path, Sharing::alone)));
  }
  {
    const auto alone = system.lock(path, Sharing::alone);
    told.push_back(said(alone) + said(system.lock(path, Sharing::with_others)) +
                   said(system.lock(path, Sharing::alone)));
  }
  told.push_back(said(system.lock(path, Sharing::alone)));
  return told;
}

Names append_story(Machine& system, const std::string& path) {
  Names told = {said(system.append(path, "one\n", false)), said(system.append(path, "two\n", true))};
  told.push_back(std::get<std::string>(system.read(path, 100)));
  return told;
}

}  // namespace

TEST_CASE("a lock is shared or held alone, and free when its holder is gone, on both systems") {
  const TemporaryFolder folder;
  DiskSystem disk;
  MemorySystem memory;
  const Names told = lock_story(disk, folder / "new/lock");
  CHECK(told == Names{"heldheldis in use", "heldis in useis in use", "held"});
  CHECK(lock_story(memory, "new/lock") == told);
}

TEST_CASE("the lock of a process that was killed is free") {
  const TemporaryFolder folder;
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  const pid_t child = ::fork();
  if (child == 0) {
    DiskSystem disk;
    const auto hold = disk.lock(folder / "lock", Sharing::alone);
    if (::write(ends[1], "x", 1) != 1) ::_exit(1);
    ::pause();
    ::_exit(0);
  }
  char byte = 0;
  REQUIRE(::read(ends[0], &byte, 1) == 1);
  DiskSystem disk;
  CHECK(said(disk.lock(folder / "lock", Sharing::alone)) == "is in use");
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  CHECK(said(disk.lock(folder / "lock", Sharing::alone)) == "held");
  ::close(ends[0]);
  ::close(ends[1]);
}

TEST_CASE("a file grows at its end, made with its folders, on both systems") {
  const TemporaryFolder folder;
  DiskSystem disk;
  MemorySystem memory;
  const Names told = append_story(disk, folder / "a/b/journal");
  CHECK(told == Names{"done", "done", "one\ntwo\n"});
  CHECK(append_story(memory, "a/b/journal") == told);
}

TEST_CASE("where nobody may write, there is no lock and nothing grows") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "closed");
  std::filesystem::permissions(folder / "closed", std::filesystem::perms(0555));
  CHECK(as_ordinary_user([&] {
          DiskSystem disk;
          return said(disk.lock(folder / "closed/x/lock", Sharing::alone)) + "; " +
                 said(disk.append(folder / "closed/journal", "x", false));
        }) == "cannot be written: you have no permission; cannot be written: you have no permission");
}

TEST_CASE("a stale temporary file is swept, one that is being written stays") {
  const TemporaryFolder folder;
  put(folder / ".fretsheaf-99999-0.tmp", "half of a handout");
  put(folder / ".fretsheaf-1-0.tmp", "being written");
  put(folder / "notes.tmp", "somebody else's");
  const int writer = ::open((folder / ".fretsheaf-1-0.tmp").c_str(), O_RDONLY);
  REQUIRE(::flock(writer, LOCK_EX) == 0);
  DiskSystem disk;
  disk.sweep(folder.path());
  CHECK(disk.list(folder.path()) == Names{".fretsheaf-1-0.tmp", "notes.tmp"});
  ::close(writer);
  disk.sweep(folder.path());
  CHECK(disk.list(folder.path()) == Names{"notes.tmp"});
  CHECK(bytes_of(folder / "notes.tmp") == "somebody else's");
}

TEST_CASE("the status of a path says what lies there, through links") {
  const TemporaryFolder folder;
  put(folder / "a", "four");
  std::filesystem::create_symlink("a", folder / "link");
  std::filesystem::create_symlink(".", folder / "loop");
  std::filesystem::create_symlink("nowhere", folder / "broken");
  const DiskSystem disk;
  const auto file = disk.status(folder / "a");
  REQUIRE(file);
  CHECK((file->kind == FileStatus::Kind::file && file->size == 4 && !file->is_link));
  CHECK(file->changed > 1'600'000'000'000'000'000);
  const auto link = disk.status(folder / "link");
  REQUIRE(link);
  CHECK((link->kind == FileStatus::Kind::file && link->size == 4 && link->is_link));
  CHECK((disk.status(folder / "loop")->kind == FileStatus::Kind::folder && disk.status(folder / "loop")->is_link));
  CHECK_FALSE(disk.status(folder / "broken"));
  CHECK_FALSE(disk.status(folder / "gone"));
}

TEST_CASE("a time is that of the last write, on both systems") {
  const TemporaryFolder folder;
  put(folder / "a", "one");
  DiskSystem disk;
  std::filesystem::last_write_time(folder / "a", std::filesystem::file_time_type::clock::now() - std::chrono::hours(1));
  const auto before = disk.status(folder / "a")->changed;
  REQUIRE(said(disk.write(folder / "a", "two")) == "done");
  CHECK(disk.status(folder / "a")->changed > before);
  MemorySystem memory;
  memory.files["sub/a"] = "one";
  CHECK((memory.status("sub/a")->changed == 0 && memory.status("sub/a")->size == 3));
  CHECK(memory.status("sub")->kind == FileStatus::Kind::folder);
  CHECK_FALSE(memory.status("su"));
  REQUIRE(said(memory.write("sub/a", "two")) == "done");
  CHECK(memory.status("sub/a")->changed > 0);
}

TEST_CASE("a path from the root on, of what is there and of what is not yet") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "real");
  std::filesystem::create_symlink("real", folder / "link");
  const DiskSystem disk;
  const std::string root = std::filesystem::canonical(folder.path()).string();
  CHECK(disk.absolute(folder / "link/../link/new/deep/") == root + "/real/new/deep");
  CHECK(disk.absolute(".") == std::filesystem::current_path().string());
  CHECK(disk.absolute("/") == "/");
  const MemorySystem memory;
  CHECK(memory.absolute("course/./a/../b/") == "/course/b");
  CHECK(memory.absolute(".") == "/");
}

TEST_CASE("the program's identity names the program and its libraries by their build ids") {
  const std::string identity = DiskSystem().identity();
  CHECK(identity == DiskSystem().identity());
  CHECK(identity.find("exe ") != std::string::npos);
  CHECK(identity.find("libc.so.6 ") != std::string::npos);
  CHECK(identity.find("linux-vdso") == std::string::npos);
  for (const std::string late : fretsheaf::platform::late_libraries) {
    CAPTURE(late);
    CHECK(identity.find(late + " ") != std::string::npos);
    CHECK(identity.find(late + " unknown") == std::string::npos);
  }
}
