#include <algorithm>
#include <catch2/catch.hpp>
#include <cctype>
#include <filesystem>
#include <set>
#include <string>

#include "house/files.h"
#include "support/project.h"

namespace fs = std::filesystem;

namespace {

const std::set<std::string> top_level = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE",     "src",
                                         "templates",      "fonts",     "tests",         "demo-lessons"};

bool is_text(const std::string& path) {
  static const std::set<std::string> endings = {".h", ".cpp", ".def", ".md", ".txt", ".toml", ".cmake", ".sh", ""};
  return endings.contains(fs::path(path).extension().string());
}

bool holds_word(const std::string& text, const std::string& word) {
  const auto is_letter = [&](std::size_t at) {
    return at < text.size() && std::isalpha(static_cast<unsigned char>(text[at]));
  };
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    if ((at == 0 || !is_letter(at - 1)) && !is_letter(at + word.size())) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("the top level holds what a visitor expects, and nothing else") {
  std::set<std::string> found;
  for (const auto& entry : fs::directory_iterator(fretsheaf::test::project_folder())) {
    const std::string name = entry.path().filename().string();
    // Dot-files are allowed; build folders are ignored by git.
    if (!name.starts_with('.') && !name.starts_with("build")) found.insert(name);
  }
  CHECK(found == top_level);
}

TEST_CASE("tests mirror the rooms") {
  const std::set<std::string> others = {"benchmarks", "browser", "fuzz", "golden", "house", "support"};
  for (const auto& entry : fs::directory_iterator(project_path("tests"))) {
    if (!entry.is_directory()) continue;
    const std::string name = entry.path().filename().string();
    CAPTURE(name);
    CHECK((others.contains(name) || fs::is_directory(project_path("src/" + name))));
  }
}

TEST_CASE("a source file is one idea, and never long") {
  for (const char* folder : {"src", "tests"}) {
    for (const std::string& path : files_below(folder, {".h", ".cpp"})) {
      const std::string text = text_of(path);
      CAPTURE(path);
      CHECK(std::count(text.begin(), text.end(), '\n') <= 600);
    }
  }
}

TEST_CASE("what begins as a script can be run, and the scripts of the guide are there") {
  std::set<std::string> scripts;
  for (const std::string& path : project_files()) {
    if (!text_of(path).starts_with("#!")) continue;
    scripts.insert(path);
    CAPTURE(path);
    CHECK((fs::status(project_path(path)).permissions() & fs::perms::owner_exec) != fs::perms::none);
  }
  for (const char* path : {"tests/run", ".ci/run", "demo-lessons/print", "tests/support/slow_checks"}) {
    CAPTURE(path);
    CHECK(scripts.contains(path));
  }
}

TEST_CASE("a library that is loaded, not linked, is named for the Debian package and the program's identity") {
  const std::string install = text_of("src/install.cmake");
  const std::string late = text_of("src/platform/loaded_library.h");
  int loaded = 0;
  for (const std::string& path : files_below("src", {".h", ".cpp"})) {
    const std::string text = text_of(path);
    for (auto at = text.find("\"lib"); at != std::string::npos; at = text.find("\"lib", at + 1)) {
      const std::string name = text.substr(at + 1, text.find('"', at + 1) - at - 1);
      if (name.find(".so") == std::string::npos || name == "libc.so.6") continue;  // which every program has
      CAPTURE(path, name);
      CHECK(install.find("\"" + name + " ") != std::string::npos);
      CHECK(late.find("\"" + name + "\"") != std::string::npos);
      ++loaded;
    }
  }
  CHECK(loaded > 0);
}

TEST_CASE("a mark is a word of its own") {
  CHECK(holds_word("// NB: x", "NB"));
  CHECK(holds_word("NB", "NB"));
  CHECK_FALSE(holds_word("NBA UNB", "NB"));
}

TEST_CASE("nothing is put off in the source") {
  // Each in two parts, so that this file does not find itself.
  const std::vector<std::string> marks = {std::string("TO") + "DO", std::string("FIX") + "ME", std::string("XX") + "X",
                                          std::string("HA") + "CK"};
  for (const std::string& path : project_files()) {
    if (!is_text(path) || path.starts_with("tests/golden/")) continue;
    const std::string text = text_of(path);
    for (const std::string& mark : marks) {
      CAPTURE(path, mark);
      CHECK_FALSE(holds_word(text, mark));
    }
  }
}

TEST_CASE("no line ends in blanks, and each text ends in a line end") {
  for (const std::string& path : project_files()) {
    if (!is_text(path) || path.starts_with("tests/golden/")) continue;
    if (path == "tests/command/cases/odd.txt") continue;  // blanks at a grid line's end are among its oddities
    const std::string text = text_of(path);
    CAPTURE(path);
    CHECK((text.empty() || text.back() == '\n'));
    CHECK(text.find(" \n") == std::string::npos);
  }
}
