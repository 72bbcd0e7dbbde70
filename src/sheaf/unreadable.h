#pragma once

#include <string>

#include "platform/system.h"

namespace fretsheaf::sheaf {

// What messages call a file that the command line names: "-" is standard input.
std::string shown_name(const std::string& path);

// Why a lesson's file cannot be read: "tide.lesson.toml: is not there; did you mean 'tides.lesson.toml'?". Of a file
// that is not there it names the lessons that are, or how to begin one; of a folder what makes its lessons' handouts.
std::string unreadable(const std::string& path, const platform::FileError& error, const platform::System& system);

}  // namespace fretsheaf::sheaf
