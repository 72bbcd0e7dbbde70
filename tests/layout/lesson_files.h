#pragma once

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

// The lessons in lessons/, by name: between them each notation that a page of music may hold.
inline std::vector<LessonFile> lesson_files(platform::System& system) {
  std::vector<LessonFile> files;
  for (const auto& entry : std::filesystem::directory_iterator(project_folder() + "/tests/layout/lessons")) {
    const auto read = system.read(entry.path().string(), 1 << 22);
    REQUIRE(std::holds_alternative<std::string>(read));
    files.push_back({entry.path().filename().string(), std::get<std::string>(read)});
  }
  std::sort(files.begin(), files.end(), [](const LessonFile& a, const LessonFile& b) { return a.name < b.name; });
  return files;
}

// A lesson of those with other staves than its own: `staves` as in the file, "[\"tab\"]".
inline std::string with_staves(const std::string& text, const std::string& staves) {
  return std::regex_replace(text, std::regex("\nstaves *=[^\n]*"), "\nstaves = " + staves);
}

}  // namespace fretsheaf::test
