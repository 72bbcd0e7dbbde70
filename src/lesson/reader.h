#pragma once

#include <optional>
#include <string>

#include "lesson/lesson.h"
#include "platform/system.h"
#include "source/diagnostic.h"
#include "source/text.h"

namespace fretsheaf::lesson {

struct ReadLesson {
  source::Files files;  // the lesson first, then its sheaf.toml where there is one
  source::Diagnostics diagnostics;
  std::optional<Lesson> lesson;  // only where there are no errors
};

// Reads a lesson file and all its rules.
// REQUIRES: `bytes` were read from `path`; `path` is how diagnostics name the file.
ReadLesson read_lesson(const std::string& path, std::string bytes, const platform::System& system);

// The contract's limit for a lesson file.
inline constexpr std::size_t max_lesson_bytes = 4 * 1024 * 1024;

}  // namespace fretsheaf::lesson
