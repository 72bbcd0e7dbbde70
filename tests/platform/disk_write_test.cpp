#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <string>

#include "platform/disk_system.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;
using Kind = FileError::Kind;
using Names = std::vector<std::string>;

namespace {

std::string said(const std::optional<FileError>& result) {
  return result ? result->what : "written";
}

std::string write(const std::string& path, std::string_view bytes) {
  return said(DiskSystem().write(path, bytes));
}

mode_t mode_of(const std::string& path) {
  struct stat found {};
  REQUIRE(::stat(path.c_str(), &found) == 0);
  return found.st_mode & 07777;
}

// As long as it lives, no file can grow beyond some bytes: a write stops in its middle, as on a full disk.
class FileSizeLimit {
 public:
  explicit FileSizeLimit(rlim_t bytes) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    handler_ = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit now{bytes, before_.rlim_max};
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &now) == 0);
  }
  FileSizeLimit(const FileSizeLimit&) = delete;
  FileSizeLimit& operator=(const FileSizeLimit&) = delete;
  ~FileSizeLimit() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }

 private:
  rlimit before_{};
  void (*handler_)(int) = SIG_DFL;
};

}  // namespace

TEST_CASE("a file is written, then replaced, with nothing left beside it") {
  const TemporaryFolder folder;
  CHECK(write(folder / "a.pdf", std::string("one\0two", 7)) == "written");
  CHECK(bytes_of(folder / "a.pdf") == std::string("one\0two", 7));
  CHECK(write(folder / "a.pdf", "") == "written");
  CHECK(bytes_of(folder / "a.pdf").empty());
  CHECK(DiskSystem().list(folder.path()) == Names{"a.pdf"});
}

TEST_CASE("a write that fails half way leaves the earlier file, and no other") {
  const TemporaryFolder folder;
  put(folder / "a.pdf", "earlier");
  const std::string large(100000, 'x');
  std::string result;
  {
    const FileSizeLimit limit(4096);
    result = write(folder / "a.pdf", large);
  }
  CHECK(result == "cannot be written: File too large");
  CHECK(bytes_of(folder / "a.pdf") == "earlier");
  CHECK(DiskSystem().list(folder.path()) == Names{"a.pdf"});
  // The same bytes pass once there is room.
  CHECK(write(folder / "a.pdf", large) == "written");
  CHECK(bytes_of(folder / "a.pdf") == large);
}

TEST_CASE("a reader of the earlier file keeps it whole while it is replaced") {
  const TemporaryFolder folder;
  put(folder / "a", "earlier");
  std::ifstream reader(folder / "a", std::ios::binary);
  CHECK(write(folder / "a", "later") == "written");
  CHECK(std::string(std::istreambuf_iterator<char>(reader), {}) == "earlier");
}

TEST_CASE("missing folders are made") {
  const TemporaryFolder folder;
  CHECK(write(folder / "one/two//three/a.svg", "x") == "written");
  CHECK(bytes_of(folder / "one/two/three/a.svg") == "x");
}

TEST_CASE("a bare name is written in the current folder") {
  const TemporaryFolder folder;
  const auto before = std::filesystem::current_path();
  std::filesystem::current_path(folder.path());
  CHECK(write("bare", "x") == "written");
  std::filesystem::current_path(before);
  CHECK(bytes_of(folder / "bare") == "x");
}

TEST_CASE("a folder, and a file in the way of one, are refused in words") {
  const TemporaryFolder folder;
  put(folder / "file", "x");
  CHECK(write(folder.path(), "y") == "is a folder");
  CHECK(write(folder / "new/", "y") == "is a folder");
  CHECK(write(folder / "file/below", "y") == "cannot be written: a part of its path is a file, not a folder");
  CHECK(write(folder / std::string(300, 'n'), "y") == "cannot be written: the name is too long");
  CHECK(write("", "y") == "cannot be written: No such file or directory");
  CHECK(DiskSystem().list(folder.path()) == Names{"file"});
}

TEST_CASE("a name as long as names can be is written") {
  const TemporaryFolder folder;
  CHECK(write(folder / std::string(255, 'n'), "y") == "written");
}

TEST_CASE("a new file has the permissions that the user's mask leaves") {
  const TemporaryFolder folder;
  const mode_t before = ::umask(027);
  CHECK(write(folder / "a", "x") == "written");
  ::umask(before);
  CHECK(mode_of(folder / "a") == 0640);
}

TEST_CASE("a file that was there keeps its permissions") {
  const TemporaryFolder folder;
  put(folder / "a", "x");
  REQUIRE(::chmod((folder / "a").c_str(), 0604) == 0);
  CHECK(write(folder / "a", "y") == "written");
  CHECK(mode_of(folder / "a") == 0604);
}

TEST_CASE("what an ordinary user may not write is refused and stays") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "open");
  put(folder / "open/locked", "x");
  REQUIRE(::chmod((folder / "open/locked").c_str(), 0444) == 0);
  REQUIRE(::chmod((folder / "open").c_str(), 0777) == 0);
  REQUIRE(::chmod(folder.path().c_str(), 0555) == 0);
  CHECK(as_ordinary_user([&] { return write(folder / "new", "y"); }) == "cannot be written: you have no permission");
  CHECK(as_ordinary_user([&] { return write(folder / "open/locked", "y"); }) ==
        "cannot be written: you have no permission");
  CHECK(as_ordinary_user([&] { return write(folder / "open/new", "y"); }) == "written");
  CHECK(bytes_of(folder / "open/locked") == "x");
  REQUIRE(::chmod(folder.path().c_str(), 0755) == 0);
}

TEST_CASE("a symbolic link stays one, and what it points to is written") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "elsewhere");
  put(folder / "elsewhere/real", "x");
  std::filesystem::create_symlink("elsewhere/real", folder / "link");
  CHECK(write(folder / "link", "y") == "written");
  CHECK(std::filesystem::is_symlink(folder / "link"));
  CHECK(bytes_of(folder / "elsewhere/real") == "y");
  CHECK(DiskSystem().list(folder / "elsewhere") == Names{"real"});
}

TEST_CASE("a device is written straight and stays one") {
  CHECK(write("/dev/null", "x") == "written");
  CHECK(std::filesystem::is_character_file("/dev/null"));
  CHECK(write("/dev/full", "x") == "cannot be written: the disk is full");
}

TEST_CASE("a dash is standard output") {
  const TemporaryFolder folder;
  const int kept = ::dup(STDOUT_FILENO);
  std::FILE* file = std::fopen((folder / "out").c_str(), "wb");
  ::dup2(::fileno(file), STDOUT_FILENO);
  const std::string result = write("-", "to the pipe");
  ::dup2(kept, STDOUT_FILENO);
  ::close(kept);
  std::fclose(file);
  CHECK(result == "written");
  CHECK(bytes_of(folder / "out") == "to the pipe");
}

TEST_CASE("a file is removed, one that is not there is no error, a folder is") {
  const TemporaryFolder folder;
  put(folder / "a", "x");
  CHECK(said(DiskSystem().remove(folder / "a")) == "written");
  CHECK_FALSE(DiskSystem().exists(folder / "a"));
  CHECK(said(DiskSystem().remove(folder / "a")) == "written");
  CHECK(said(DiskSystem().remove(folder.path())) == "is a folder");
}
