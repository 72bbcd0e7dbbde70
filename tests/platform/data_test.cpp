#include <array>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <string>

#include "platform/data_folder.h"
#include "platform/disk_system.h"
#include "platform/fonts.h"
#include "support/project.h"
#include "support/temporary_folder.h"

using namespace fretsheaf::platform;

TEST_CASE("data lie where the environment says, else where installed, else in the checkout") {
  const auto installed = [](const std::string& path) { return path == "/opt/bin/../share/fretsheaf"; };
  CHECK(data_folder({"/chosen", "/opt/bin/fretsheaf", "/checkout"}, installed) == "/chosen");
  CHECK(data_folder({"", "/opt/bin/fretsheaf", "/checkout"}, installed) == "/opt/bin/../share/fretsheaf");
  CHECK(data_folder({"", "/checkout/build/src/fretsheaf", "/checkout"}, installed) == "/checkout");
  CHECK(data_folder({"", "", "/checkout"}, installed) == "/checkout");
  const auto elsewhere = [](const std::string& path) { return path == "/opt/games/bin/../../data/fretsheaf"; };
  CHECK(data_folder({"", "/opt/games/bin/fretsheaf", "/checkout", "../../data/fretsheaf"}, elsewhere) ==
        "/opt/games/bin/../../data/fretsheaf");
}

TEST_CASE("a program of the build tree finds its data in the checkout") {
  ::unsetenv("FRETSHEAF_DATA");
  CHECK(DiskSystem().data_path("templates") == fretsheaf::test::project_folder() + "/templates");
  ::setenv("FRETSHEAF_DATA", "/elsewhere", 1);
  CHECK(DiskSystem().data_path("templates") == "/elsewhere/templates");
  ::unsetenv("FRETSHEAF_DATA");
}

TEST_CASE("fonts of Debian's packages are found by their bare names") {
  // As dpkg -L lists them for fonts-noto-core, fonts-sil-charis, fonts-inter and fonts-dejavu-core in Debian 12.
  const DiskSystem disk;
  CHECK(disk.font_path("NotoMusic-Regular.ttf") == "/usr/share/fonts/truetype/noto/NotoMusic-Regular.ttf");
  CHECK(disk.font_path("CharisSIL-Regular.ttf") == "/usr/share/fonts/truetype/charis/CharisSIL-Regular.ttf");
  CHECK(disk.font_path("Inter-SemiBold.otf") == "/usr/share/fonts/opentype/inter/Inter-SemiBold.otf");
  CHECK(disk.font_path("DejaVuSansMono.ttf") == "/usr/share/fonts/truetype/dejavu/DejaVuSansMono.ttf");
  CHECK(disk.font_path("NoSuchFont-Regular.ttf").empty());
}

TEST_CASE("known folders come first, then a walk in the order of names") {
  const TemporaryFolder folder;
  for (const char* name : {"b", "a", "a/deep", "known"}) std::filesystem::create_directories(folder / name);
  put(folder / "b/Reed.otf", "");
  put(folder / "a/deep/Reed.otf", "");
  put(folder / "known/Kelp.otf", "");
  put(folder / "a/Kelp.otf", "");
  std::filesystem::create_directory(folder / "b/Sand.otf");
  const std::string known = folder / "known";
  const std::array<std::string_view, 1> folders = {known};
  CHECK(find_font("Kelp.otf", folders, folder.path()) == folder / "known/Kelp.otf");
  CHECK(find_font("Reed.otf", folders, folder.path()) == folder / "a/deep/Reed.otf");
  CHECK(find_font("Sand.otf", folders, folder.path()).empty());  // a folder is no font
  CHECK(find_font("deep/Reed.otf", folders, folder / "a").empty());
  CHECK(find_font("", folders, folder.path()).empty());
}

TEST_CASE("a link that leads back up ends the walk") {
  const TemporaryFolder folder;
  std::filesystem::create_directory_symlink(".", folder / "loop");
  CHECK(find_font("Reed.otf", {}, folder.path()).empty());
}
