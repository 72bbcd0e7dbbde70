#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "command/sheaf_fixture.h"
#include "support/running.h"
#include "support/temporary_folder.h"

namespace fretsheaf::test {

// A course in a folder of its own: lessons in two units, each in four keys.
class CourseOnDisk {
 public:
  explicit CourseOnDisk(int lessons = 6) : lessons_(lessons) { write(1); }

  std::string path() const { return folder_.path(); }
  std::string operator/(const std::string& name) const { return folder_ / name; }

  // Writes all lessons; those of another version are others.
  void write(int version) {
    for (int i = 0; i < lessons_; ++i) {
      const std::string unit = folder_ / ("course/unit-" + std::to_string(i % 2));
      std::filesystem::create_directories(unit);
      put(unit + "/lesson-" + std::to_string(i) + ".lesson.toml",
          course_lesson(i % 5 + version, "[\"E dorian\", \"F dorian\", \"A dorian\"]"));
    }
  }

  // Runs `fretsheaf sheaf WORDS` in the folder above the course.
  int run(const std::string& words, std::string* said = nullptr) const {
    return shell("fretsheaf sheaf " + words, path(), said);
  }

  // The files below a folder, without those whose names begin with a dot, and their bytes.
  std::map<std::string, std::string> files(const std::string& below) const {
    std::map<std::string, std::string> found;
    const std::string root = folder_ / below;
    if (!std::filesystem::exists(root)) return found;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
      const std::string name = std::filesystem::relative(entry.path(), root).string();
      if (entry.is_regular_file() && !name.starts_with(".") && name.find("/.") == std::string::npos) {
        found[name] = bytes_of(entry.path().string());
      }
    }
    return found;
  }

  // Names of temporary files below a folder.
  std::string leftovers(const std::string& below) const {
    std::string found;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder_ / below)) {
      const std::string name = entry.path().filename().string();
      if (name.ends_with(".tmp")) found += name + "\n";
    }
    return found;
  }

 private:
  TemporaryFolder folder_;
  int lessons_;
};

}  // namespace fretsheaf::test
