#pragma once

#include <string>

namespace fretsheaf::platform {

// The path behind all symbolic links; the path itself where there is no such file.
std::string real_path(const std::string& path);

}  // namespace fretsheaf::platform
