#pragma once

#include <string>

#include "platform/system.h"

namespace fretsheaf::sheaf {

// Why a lesson's file cannot be read: "tide.lesson.toml: is not there; did you mean 'tides.lesson.toml'?". Of a file
// that is not there it names the lessons that are, or how to begin one; of a folder what makes its lessons' handouts.
std::string unreadable(const std::string& path, const platform::FileError& error, const platform::System& system);

}  // namespace fretsheaf::sheaf
