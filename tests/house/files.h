#pragma once

#include <string>
#include <vector>

// The files of the project, as paths from its top ("src/main.cpp"), sorted; without what git ignores and git's own.
std::vector<std::string> project_files();

// Those of them that lie below `folder` and end in one of `endings`.
std::vector<std::string> files_below(const std::string& folder, const std::vector<std::string>& endings);

std::string project_path(const std::string& path);
std::string text_of(const std::string& path);
