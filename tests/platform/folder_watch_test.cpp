// What changes in folders is told, however a program saves.
#include "platform/folder_watch.h"

#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "platform/secret.h"
#include "platform/wake.h"
#include "platform/worker_process.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;
namespace fs = std::filesystem;

namespace {

bool rings(int descriptor) {
  const std::array<int, 1> asked = {descriptor};
  return !readable(asked, 0).empty();
}

using Paths = std::vector<std::string>;

}  // namespace

TEST_CASE("a file that was written, renamed into place or removed is told of once it is whole") {
  const TemporaryFolder folder;
  FolderWatch watch;
  REQUIRE(watch.follow(folder.path()));
  CHECK_FALSE(rings(watch.descriptor()));
  std::ofstream open(folder / "a");
  open << "half" << std::flush;
  CHECK(watch.changes().paths.empty());
  open.close();
  CHECK(rings(watch.descriptor()));
  CHECK(watch.changes().paths == Paths{folder / "a"});
  CHECK_FALSE(rings(watch.descriptor()));
  fs::rename(folder / "a", folder / "b");
  CHECK(watch.changes().paths == Paths{folder / "a", folder / "b"});
  fs::remove(folder / "b");
  CHECK(watch.changes().paths == Paths{folder / "b"});
}

TEST_CASE("a folder that comes is told of, and can be followed, and so can one in its place") {
  const TemporaryFolder folder;
  FolderWatch watch;
  CHECK_FALSE(watch.follow(folder / "in"));
  REQUIRE(watch.follow(folder.path()));
  fs::create_directory(folder / "in");
  CHECK(watch.changes().paths == Paths{folder / "in"});
  REQUIRE(watch.follow(folder / "in"));
  REQUIRE(watch.follow(folder / "in"));
  put(folder / "in/a", "x");
  CHECK(watch.changes().paths == Paths{folder / "in/a"});
  fs::remove_all(folder / "in");
  CHECK(watch.changes().paths == Paths{folder / "in/a", folder / "in"});
  fs::create_directory(folder / "in");
  REQUIRE(watch.follow(folder / "in"));
  watch.changes();
  put(folder / "in/b", "x");
  CHECK(watch.changes().paths == Paths{folder / "in/b"});
}

TEST_CASE("a file is nothing that could be followed") {
  const TemporaryFolder folder;
  put(folder / "a", "x");
  FolderWatch watch;
  CHECK_FALSE(watch.follow(folder / "a"));
}

TEST_CASE("a bell rings until it is silenced") {
  const Wake bell;
  CHECK_FALSE(rings(bell.descriptor()));
  bell.ring();
  bell.ring();
  CHECK(rings(bell.descriptor()));
  bell.silence();
  CHECK_FALSE(rings(bell.descriptor()));
}

TEST_CASE("a secret is 32 hexadecimal digits, and never the same") {
  const std::string one = new_secret().value();
  CHECK(one.size() == 32);
  CHECK(one.find_first_not_of("0123456789abcdef") == std::string::npos);
  CHECK(new_secret() != one);
}
