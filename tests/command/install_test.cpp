// `cmake --install` into a folder of the test's own: what lies where, and that the program finds its data there.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "support/project.h"
#include "support/running.h"
#include "support/temporary_folder.h"

namespace fs = std::filesystem;
using namespace fretsheaf;

namespace {

void install(const std::string& prefix) {
  const std::string build = fs::path(test::program()).parent_path().parent_path().lexically_normal().string();
  std::string said;
  const int status = test::shell("cmake --install '" + build + "' --prefix '" + prefix + "'", "/", &said);
  INFO(said);
  REQUIRE(status == 0);
}

std::vector<std::string> files_in(const std::string& folder) {
  std::vector<std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.is_regular_file()) files.push_back(entry.path().lexically_relative(folder).string());
  }
  std::sort(files.begin(), files.end());
  return files;
}

bool holds(const std::vector<std::string>& files, const std::string& file) {
  return std::find(files.begin(), files.end(), file) != files.end();
}

// Runs the program that lies in `bin` and nothing else, in an environment that names nothing else.
int run_installed(const std::string& bin, const std::string& words, const std::string& folder, std::string* said) {
  return test::shell("/usr/bin/env -i PATH='" + bin + "' /bin/sh -c 'fretsheaf " + words + "'", folder, said);
}

}  // namespace

TEST_CASE("installed, each file lies where such files are looked for") {
  const TemporaryFolder folder;
  install(folder / "some where");
  const std::vector<std::string> files = files_in(folder / "some where");
  for (const char* file :
       {"bin/fretsheaf", "share/fretsheaf/templates/music-stand.toml", "share/fretsheaf/templates/compact.toml",
        "share/fretsheaf/templates/large-print.toml", "share/fretsheaf/templates/README.md",
        "share/fretsheaf/fonts/fonts.toml", "share/fretsheaf/fonts/outlines.toml", "share/man/man1/fretsheaf.1",
        "share/bash-completion/completions/fretsheaf", "share/zsh/site-functions/_fretsheaf",
        "share/fish/vendor_completions.d/fretsheaf.fish", "share/doc/fretsheaf/README.md",
        "lib/fretsheaf/fretsheaf-preview.so", "share/doc/fretsheaf/copyright",
        "share/doc/fretsheaf/demo-lessons/low-tide-vamp.lesson.toml"}) {
    INFO(file);
    CHECK(holds(files, file));
  }
  for (const std::string& file : files) {
    INFO(file);
    CHECK((file.starts_with("bin/") || file.starts_with("lib/fretsheaf/") || file.starts_with("share/")));
    CHECK(file.find("handouts") == std::string::npos);
  }
}

TEST_CASE("installed, the program finds its data beside it, also moved and called by a link") {
  const TemporaryFolder folder;
  install(folder / "first");
  fs::rename(folder / "first", folder / "moved");
  fs::create_directory(folder / "links");
  fs::create_symlink("../moved/bin/fretsheaf", folder / "links/fretsheaf");
  fs::copy_file(folder / "moved/share/doc/fretsheaf/demo-lessons/low-tide-vamp.lesson.toml",
                folder / "tide.lesson.toml");
  std::string said;
  for (const char* bin : {"moved/bin", "links"}) {
    CHECK(run_installed(folder / bin, "typeset tide.lesson.toml --as pdf,svg,musicxml", folder.path(), &said) == 0);
    CHECK(said.empty());
    CHECK(bytes_of(folder / "tide.d-dorian.pdf").starts_with("%PDF-"));
  }
  // The checkout that the program was built from is there as well: it must not be what was read.
  const std::string look = "/share/fretsheaf/templates/compact.toml";
  put(folder / "moved" + look, "margin = 1\n");
  CHECK(run_installed(folder / "moved/bin", "typeset tide.lesson.toml --template compact", folder.path(), &said) == 1);
  INFO(said);
  CHECK(said.find(look + ":1:1: error: a template has no key 'margin' here") != std::string::npos);
}
