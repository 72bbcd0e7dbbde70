#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <catch2/catch.hpp>
#include <limits>
#include <string>

#include "platform/disk_system.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;
using Kind = FileError::Kind;

namespace {

constexpr std::size_t plenty = 1 << 20;

std::string content(const FileResult<std::string>& result) {
  const auto* bytes = std::get_if<std::string>(&result);
  return bytes == nullptr ? "error: " + std::get<FileError>(result).what : *bytes;
}

FileError error(const FileResult<std::string>& result) {
  return std::get<FileError>(result);
}

// Standard input, for as long as it lives, is what was written into it.
class StandardInput {
 public:
  explicit StandardInput(const std::string& bytes) : kept_(::dup(STDIN_FILENO)) {
    std::array<int, 2> ends{};
    REQUIRE(::pipe(ends.data()) == 0);
    REQUIRE(::write(ends[1], bytes.data(), bytes.size()) == static_cast<ssize_t>(bytes.size()));
    ::close(ends[1]);
    ::dup2(ends[0], STDIN_FILENO);
    ::close(ends[0]);
  }
  StandardInput(const StandardInput&) = delete;
  StandardInput& operator=(const StandardInput&) = delete;
  ~StandardInput() {
    ::dup2(kept_, STDIN_FILENO);
    ::close(kept_);
  }

 private:
  int kept_;
};

}  // namespace

TEST_CASE("a file is read whole, byte for byte") {
  const TemporaryFolder folder;
  std::string all;
  for (int i = 0; i < 3000; ++i) all += static_cast<char>(i % 256);
  put(folder / "a", all);
  put(folder / "empty", "");
  CHECK(content(DiskSystem().read(folder / "a", plenty)) == all);
  CHECK(content(DiskSystem().read(folder / "a", std::numeric_limits<std::size_t>::max())) == all);
  CHECK(content(DiskSystem().read(folder / "empty", plenty)).empty());
  CHECK(content(DiskSystem().read(folder / "empty", 0)).empty());
}

TEST_CASE("a file of the limit's size is read, one byte more is refused") {
  const TemporaryFolder folder;
  put(folder / "a", "12345");
  CHECK(content(DiskSystem().read(folder / "a", 5)) == "12345");
  const auto refused = error(DiskSystem().read(folder / "a", 4));
  CHECK(refused.kind == Kind::too_large);
  CHECK(refused.what == "is larger than 4 bytes");
}

TEST_CASE("a limit of mebibytes is named so") {
  const TemporaryFolder folder;
  put(folder / "a", "");
  REQUIRE(::truncate((folder / "a").c_str(), 64L << 20) == 0);
  CHECK(error(DiskSystem().read(folder / "a", 4U << 20)).what == "is larger than 4 MiB");
}

TEST_CASE("a view holds what reading gives, for as long as it is kept") {
  const TemporaryFolder folder;
  put(folder / "a", "reeds");
  put(folder / "empty", "");
  SharedBytes kept;
  {
    const auto seen = DiskSystem().view(folder / "a", 5);
    kept = std::get<SharedBytes>(seen);
  }
  CHECK(kept.bytes == "reeds");
  CHECK(std::get<SharedBytes>(DiskSystem().view(folder / "empty", 5)).bytes.empty());
  CHECK(std::get<FileError>(DiskSystem().view(folder / "a", 4)).kind == Kind::too_large);
  CHECK(std::get<FileError>(DiskSystem().view(folder / "gone", 4)).kind == Kind::missing);
  CHECK(std::get<FileError>(DiskSystem().view(folder.path(), 4)).kind == Kind::folder);
}

TEST_CASE("a file that does not tell its size is held to the limit too") {
  CHECK(error(DiskSystem().read("/dev/zero", 100000)).kind == Kind::too_large);
}

TEST_CASE("missing, a folder and not allowed are told apart in words") {
  const TemporaryFolder folder;
  put(folder / "file", "x");
  CHECK(error(DiskSystem().read(folder / "gone", plenty)).kind == Kind::missing);
  CHECK(error(DiskSystem().read(folder / "gone", plenty)).what == "is not there");
  CHECK(error(DiskSystem().read(folder / "file/below", plenty)).kind == Kind::missing);
  CHECK(error(DiskSystem().read(folder.path(), plenty)).kind == Kind::folder);
  CHECK(error(DiskSystem().read(folder.path(), plenty)).what == "is a folder");
  CHECK(error(DiskSystem().read("", plenty)).kind == Kind::missing);
  REQUIRE(::chmod((folder / "file").c_str(), 0) == 0);
  CHECK(as_ordinary_user([&] { return content(DiskSystem().read(folder / "file", plenty)); }) ==
        "error: cannot be read: you have no permission");
}

TEST_CASE("a dash is standard input") {
  {
    const StandardInput input("title = 1\n");
    CHECK(content(DiskSystem().read("-", plenty)) == "title = 1\n");
  }
  const StandardInput input("12345");
  CHECK(error(DiskSystem().read("-", 4)).kind == Kind::too_large);
}

TEST_CASE("a folder's names are sorted by bytes") {
  const TemporaryFolder folder;
  for (const char* name : {"b", "a", "B", "é", ".hidden"}) put(folder / name, "");
  CHECK(DiskSystem().list(folder.path()) == std::vector<std::string>{".hidden", "B", "a", "b", "é"});
  CHECK(DiskSystem().list(folder / "gone").empty());
  CHECK(DiskSystem().list(folder / "a").empty());
}

TEST_CASE("files and folders exist, what is gone does not") {
  const TemporaryFolder folder;
  put(folder / "a", "");
  CHECK(DiskSystem().exists(folder / "a"));
  CHECK(DiskSystem().exists(folder.path()));
  CHECK_FALSE(DiskSystem().exists(folder / "b"));
}

TEST_CASE("a pipe among files keeps nobody waiting for a writer") {
  const TemporaryFolder folder;
  const std::string pipe = folder / "logo.svg";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  CHECK(content(DiskSystem().read(pipe, plenty)) == "error: is no ordinary file");
  const auto viewed = DiskSystem().view(pipe, plenty);
  CHECK(std::get<FileError>(viewed).what == "is no ordinary file");
  DiskSystem system;
  CHECK(system.append(pipe, "x", false).has_value());
}

TEST_CASE("a pipe that a shell hands over is read") {
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  REQUIRE(::write(ends[1], "tide", 4) == 4);
  ::close(ends[1]);
  CHECK(content(DiskSystem().read("/dev/fd/" + std::to_string(ends[0]), plenty)) == "tide");
  ::close(ends[0]);
}
