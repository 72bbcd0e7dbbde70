#pragma once

#include <string>
#include <utility>
#include <vector>

#include "command/command.h"
#include "platform/disk_system.h"
#include "platform/memory_system.h"

namespace fretsheaf::test {

// A short lesson, whose one note says which lesson it is.
inline std::string course_lesson(int fret, const std::string& also_in = "[\"E dorian\"]") {
  return "title = \"Lesson " + std::to_string(fret) + "\"\nkey = \"D dorian\"\nalso-in = " + also_in +
         "\ninstrument = \"bass\"\n[[example]]\ntab = '''\ncount | 1   2   3   4   |\nA     | " + std::to_string(fret) +
         "       5       |\n'''\n";
}

// A course in memory: three lessons, each in two keys.
struct CourseInMemory {
  platform::DiskSystem disk;  // for the program's own data and fonts
  platform::MemorySystem system{disk};
  command::Console console;

  CourseInMemory() {
    system.files["course/one.lesson.toml"] = course_lesson(1);
    system.files["course/two.lesson.toml"] = course_lesson(2);
    system.files["course/unit/three.lesson.toml"] = course_lesson(3);
  }

  command::Exit run(std::vector<std::string> words) {
    console = {};
    words.insert(words.begin(), "sheaf");
    return command::run(std::move(words), system, console);
  }

  // The last line of what was said, without the time.
  std::string summary() const {
    std::string text = console.errors;
    while (!text.empty() && text.back() == '\n') text.pop_back();
    text = text.substr(text.rfind('\n') + 1);
    return text.substr(0, text.rfind(", in "));
  }

  // The outputs of the course, and their bytes.
  std::map<std::string, std::string> outputs() const {
    std::map<std::string, std::string> found;
    for (const auto& [path, bytes] : system.files) {
      if (path.starts_with("course/") && !path.ends_with(".toml") && path.find("/.") == std::string::npos) {
        found[path] = bytes;
      }
    }
    return found;
  }
};

}  // namespace fretsheaf::test
