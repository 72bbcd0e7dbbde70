#pragma once

#include <optional>
#include <string>

#include "lesson/reader.h"
#include "platform/system.h"

namespace fretsheaf::lesson {

// The sheaf.toml that a lesson belongs to.
struct SheafOf {
  std::string path;
  SheafOutput output;  // as far as it can be read; reading a lesson says what is wrong with it
};

// The nearest one, in the folder of the lesson file or above it; nullopt where there is none.
std::optional<SheafOf> sheaf_of(const std::string& lesson_path, const platform::System& system);

// Whether a file is one, by its name: it is read beside lessons, never as a lesson.
bool is_sheaf_file(const std::string& path);

}  // namespace fretsheaf::lesson
