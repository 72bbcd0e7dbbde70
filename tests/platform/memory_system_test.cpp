#include "platform/memory_system.h"

#include <catch2/catch.hpp>
#include <string>

#include "platform/disk_system.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;
using Kind = FileError::Kind;
using Names = std::vector<std::string>;

namespace {

constexpr std::size_t plenty = 1 << 20;

std::string content(const FileResult<std::string>& result) {
  const auto* bytes = std::get_if<std::string>(&result);
  return bytes == nullptr ? "error: " + std::get<FileError>(result).what : *bytes;
}

std::string said(const std::optional<FileError>& result) {
  return result ? result->what : "done";
}

// One story, told to both systems: what it returns must not tell them apart.
Names story(System& system, const std::string& root) {
  Names told;
  const auto tell = [&](std::string word) { told.push_back(std::move(word)); };
  tell(said(system.write(root + "/one/a", "first")));
  tell(said(system.write(root + "/one/a", "second")));
  tell(content(system.read(root + "/one/a", plenty)));
  tell(content(system.read(root + "/one/a", 5)));
  tell(content(system.read(root + "/one", plenty)));
  tell(content(system.read(root + "/gone", plenty)));
  tell(said(system.write(root + "/one", "x")));
  tell(said(system.write(root + "/new/", "x")));
  tell(said(system.write(root + "/two/deep/b", "x")));
  tell(said(system.write(root + "/c", "x")));
  for (const auto& name : system.list(root)) tell(name);
  tell(std::to_string(system.list(root + "/gone").size()));
  tell(said(system.remove(root + "/c")) + said(system.remove(root + "/c")) + said(system.remove(root + "/one")));
  for (const char* path : {"/one/a", "/one", "/c", "/gone"}) tell(system.exists(root + path) ? "there" : "not there");
  return told;
}

}  // namespace

TEST_CASE("both systems tell the same story") {
  const TemporaryFolder folder;
  DiskSystem disk;
  MemorySystem memory;
  const Names told = story(disk, folder.path());
  CHECK(story(memory, "/root") == told);
  CHECK(told.size() == 19);
}

TEST_CASE("what is to fail fails, and leaves the earlier file") {
  MemorySystem memory;
  memory.files["a"] = "earlier";
  memory.write_failures["a"] = {Kind::other, "cannot be written: the disk is full"};
  memory.read_failures["b"] = {Kind::not_allowed, "cannot be read: you have no permission"};
  CHECK(said(memory.write("a", "later")) == "cannot be written: the disk is full");
  CHECK(content(memory.read("a", plenty)) == "earlier");
  CHECK(said(memory.remove("a")) == "cannot be written: the disk is full");
  CHECK(content(memory.read("b", plenty)) == "error: cannot be read: you have no permission");
}

TEST_CASE("a dash is the standard streams") {
  MemorySystem memory;
  memory.standard_input = "in";
  CHECK(content(memory.read("-", plenty)) == "in");
  CHECK(content(memory.read("-", 1)) == "error: is larger than 1 byte");
  CHECK(said(memory.write("-", "out")) == "done");
  CHECK(memory.standard_output == "out");
}

TEST_CASE("the folder of bare names is a dot") {
  MemorySystem memory;
  memory.files["a"] = "";
  memory.files["sub/b"] = "";
  CHECK(memory.list(".") == Names{"a", "sub"});
  CHECK(memory.list("sub") == Names{"b"});
}

TEST_CASE("data and fonts are in memory, or beneath") {
  MemorySystem memory;
  CHECK(memory.data_path("templates") == "/data/templates");
  CHECK(memory.font_path("Inter-Bold.otf").empty());
  memory.fonts["Inter-Bold.otf"] = "/fonts/bold";
  CHECK(memory.font_path("Inter-Bold.otf") == "/fonts/bold");

  const DiskSystem disk;
  MemorySystem above(disk);
  CHECK(above.font_path("Inter-Bold.otf") == disk.font_path("Inter-Bold.otf"));
  CHECK(above.data_path("templates") == disk.data_path("templates"));
  above.files["/data/templates/music-stand.toml"] = "";
  CHECK(above.data_path("templates") == "/data/templates");
}

TEST_CASE("what is beneath can be read and is never written") {
  const TemporaryFolder folder;
  put(folder / "a", "on disk");
  const DiskSystem disk;
  MemorySystem above(disk);
  CHECK(content(above.read(folder / "a", plenty)) == "on disk");
  CHECK(std::get<SharedBytes>(above.view(folder / "a", plenty)).bytes == "on disk");
  CHECK(said(above.write(folder / "a", "above")) == "done");
  CHECK(said(above.write(folder / "b", "above")) == "done");
  CHECK(content(above.read(folder / "a", plenty)) == "above");
  CHECK(std::get<SharedBytes>(above.view(folder / "a", plenty)).bytes == "above");
  CHECK(bytes_of(folder / "a") == "on disk");
  CHECK(above.list(folder.path()) == Names{"a", "b"});
  CHECK(disk.list(folder.path()) == Names{"a"});
}
