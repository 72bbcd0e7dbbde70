// The guides name files that are there, and link to what is there.
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>
#include <string>

#include "house/files.h"

namespace fs = std::filesystem;

namespace {

// What stands between two backquotes and begins with a folder of the project's top.
std::set<std::string> named_paths(const std::string& text) {
  std::set<std::string> paths;
  for (std::size_t at = 0; (at = text.find('`', at)) != std::string::npos;) {
    const std::size_t end = text.find('`', at + 1);
    if (end == std::string::npos) break;
    const std::string word = text.substr(at + 1, end - at - 1);
    at = end + 1;
    if (word.find_first_of(" *\n") != std::string::npos) continue;
    for (const char* folder : {"src/", "tests/", "demo-lessons/", "templates/", "fonts/"}) {
      if (word.starts_with(folder)) paths.insert(word);
    }
  }
  return paths;
}

// Where Markdown links and pictures lead within the project.
std::set<std::string> linked(const std::string& text) {
  std::set<std::string> paths;
  for (std::size_t at = 0; (at = text.find("](", at)) != std::string::npos; ++at) {
    const std::string to = text.substr(at + 2, text.find(')', at) - at - 2);
    if (!to.starts_with("#") && to.find(':') == std::string::npos) paths.insert(to.substr(0, to.find('#')));
  }
  return paths;
}

}  // namespace

TEST_CASE("the guides name files that are there") {
  for (const char* guide : {"README.md", "DEVELOPERS.md"}) {
    const std::set<std::string> paths = named_paths(text_of(guide));
    CHECK(paths.size() > 4);
    for (const std::string& path : paths) {
      CAPTURE(guide, path);
      // What a command makes is not there before.
      CHECK((path == "demo-lessons/handouts/" || fs::exists(project_path(path))));
    }
  }
}

TEST_CASE("links of Markdown lead to files that are there") {
  int links = 0;
  for (const std::string& path : project_files()) {
    if (!path.ends_with(".md")) continue;
    for (const std::string& to : linked(text_of(path))) {
      CAPTURE(path, to);
      CHECK(fs::exists(fs::path(project_path(path)).parent_path() / to));
      ++links;
    }
  }
  CHECK(links > 40);
}

TEST_CASE("a named path and a link are found") {
  CHECK(named_paths("`src/a.h` and `src/b c` in `tests/`, `x/y`") == std::set<std::string>{"src/a.h", "tests/"});
  CHECK(linked("![a](b.svg) [c](../d.md#e) [f](#g) [h](https://example.org)") ==
        std::set<std::string>{"b.svg", "../d.md"});
}
