#pragma once

#include <algorithm>
#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include "layout/music_fixture.h"
#include "support/project.h"

namespace fretsheaf::test {

struct LessonFile {
  std::string name;
  std::string text;
};

inline std::string text_of(platform::System& system, const std::string& path) {
  const auto read = system.read(path, 1 << 22);
  REQUIRE(std::holds_alternative<std::string>(read));
  return std::get<std::string>(read);
}

// The lessons in a folder, by name.
inline std::vector<LessonFile> lessons_in(const std::string& folder, platform::System& system) {
  std::vector<LessonFile> files;
  for (const auto& entry : std::filesystem::directory_iterator(project_folder() + "/" + folder)) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(".lesson.toml")) files.push_back({name, text_of(system, entry.path().string())});
  }
  std::sort(files.begin(), files.end(), [](const LessonFile& a, const LessonFile& b) { return a.name < b.name; });
  return files;
}

// Those of the tests: between them each notation that a page of music may hold.
inline std::vector<LessonFile> lesson_files(platform::System& system) {
  return lessons_in("tests/layout/lessons", system);
}

// The demo lessons, and the contract's example.
inline std::vector<LessonFile> demo_lessons(platform::System& system) {
  std::vector<LessonFile> all = lessons_in("demo-lessons", system);
  // A logo's file would have to lie beside it.
  std::string example = text_of(system, project_folder() + "/tests/command/format-example.lesson.toml");
  const std::size_t logo = example.find("\nlogo ") + 1;
  example.erase(logo, example.find("\nhanded") + 1 - logo);
  all.push_back({"the contract's example", std::move(example)});
  return all;
}

// A lesson of those with other staves than its own: `staves` as in the file, "[\"tab\"]".
inline std::string with_staves(const std::string& text, const std::string& staves) {
  return std::regex_replace(text, std::regex("\nstaves *=[^\n]*"), "\nstaves = " + staves);
}

}  // namespace fretsheaf::test
