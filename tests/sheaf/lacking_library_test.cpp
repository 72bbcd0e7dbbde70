// A library that is loaded late may be missing: what needs it says so, and all else of a course is made.
#include <catch2/catch.hpp>
#include <filesystem>

#include "support/running.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;

TEST_CASE("a lesson that needs a missing library names it and its package, and the other lessons are made") {
  const std::string lesson = "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "course");
  put(folder / "course/plain.lesson.toml", lesson);
  put(folder / "course/linked.lesson.toml", lesson + "link = \"https://example.org/tide\"\n");
  // A file that is no library, where the machine looks first.
  std::filesystem::create_directory(folder / "first");
  put(folder / "first/libqrencode.so.4", "none");
  std::string said;
  CHECK(test::shell("LD_LIBRARY_PATH=\"$PWD/first\" fretsheaf sheaf course --to out --quiet", folder.path(), &said) ==
        3);
  CHECK(said.find("fretsheaf: error: course/linked.lesson.toml: libqrencode.so.4 cannot be loaded: QR codes need "
                  "Debian's package libqrencode4\n") != std::string::npos);
  CHECK(said.find("process") == std::string::npos);
  CHECK(std::filesystem::exists(folder / "out/plain.d-dorian.pdf"));
  CHECK_FALSE(std::filesystem::exists(folder / "out/linked.d-dorian.pdf"));
  CHECK(
      test::shell("LD_LIBRARY_PATH=\"$PWD/first\" fretsheaf typeset course/linked.lesson.toml course/plain.lesson.toml",
                  folder.path(), &said) == 3);
  CHECK(said.find("fretsheaf: error: course/linked.lesson.toml: libqrencode.so.4 cannot be loaded: QR codes need "
                  "Debian's package libqrencode4\n") != std::string::npos);
  CHECK(std::filesystem::exists(folder / "course/plain.d-dorian.pdf"));
}
