#pragma once

#include <string>
#include <vector>

namespace fretsheaf::platform {

// The names of a folder's entries but `.` and `..`, sorted by bytes; empty where it is no folder or may not be read.
std::vector<std::string> folder_names(const std::string& folder);

// The folder that a path's file lies in: "a/b.pdf" → "a/", "b.pdf" → ".".
std::string folder_of(const std::string& path);

// Makes a folder (which ends in `/`, or is ".") and those above it where they are missing; 0, or the error number.
int make_folders(const std::string& folder);

}  // namespace fretsheaf::platform
