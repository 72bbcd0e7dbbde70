#include "lesson/sheaf_of.h"

#include "lesson/keys_sheaf.h"

namespace fretsheaf::lesson {

std::optional<SheafOf> sheaf_of(const std::string& lesson_path, const platform::System& system) {
  std::optional<std::string> path = find_sheaf(lesson_path, system);
  if (!path) return std::nullopt;
  LessonKeys keys;
  ReadLesson read;
  const TomlValue tree = read_sheaf(*path, system, keys, read);
  return SheafOf{std::move(*path), std::move(read.output)};
}

bool is_sheaf_file(const std::string& path) {
  return path.substr(path.rfind('/') + 1) == "sheaf.toml";
}

}  // namespace fretsheaf::lesson
