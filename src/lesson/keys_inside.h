#pragma once

#include <string>

#include "platform/system.h"

namespace fretsheaf::lesson {

// Whether a path, of a file that need not be there yet, stays in the folder `root` (empty: the current one), with every
// symbolic link on its way followed. `path` is normal, and taken from where `root` is.
bool stays_inside(const std::string& path, const std::string& root, const platform::System& system);

}  // namespace fretsheaf::lesson
