#pragma once

#include <string>
#include <vector>

namespace fretsheaf::platform {

// The names of a folder's entries but `.` and `..`, sorted by bytes; empty where it is no folder or may not be read.
std::vector<std::string> folder_names(const std::string& folder);

}  // namespace fretsheaf::platform
