#pragma once

#include <optional>
#include <string>

#include "lesson/keys_lesson.h"
#include "lesson/reader.h"

namespace fretsheaf::lesson {

// The path of the nearest sheaf.toml, in the folder of the lesson file or above it.
std::optional<std::string> find_sheaf(const std::string& lesson_path, const platform::System& system);

// Reads a sheaf.toml: its [defaults] into `keys`, its [output] into `read`, its text into the files. The tree that is
// returned must outlive `keys`; it is empty where the file cannot be read.
TomlValue read_sheaf(const std::string& path, const platform::System& system, LessonKeys& keys, ReadLesson& read);

}  // namespace fretsheaf::lesson
