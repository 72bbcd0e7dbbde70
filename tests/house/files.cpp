#include "house/files.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "support/project.h"

namespace fs = std::filesystem;

namespace {

bool is_ignored(const fs::path& path) {
  const std::string relative = path.lexically_relative(fretsheaf::test::project_folder()).string();
  return relative == ".git" || relative == "demo-lessons/handouts" || relative == "tests/browser/node_modules" ||
         (relative.starts_with("build") && relative.find('/') == std::string::npos);
}

}  // namespace

std::string project_path(const std::string& path) {
  return fretsheaf::test::project_folder() + "/" + path;
}

std::string text_of(const std::string& path) {
  std::ifstream file(project_path(path), std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<std::string> project_files() {
  std::vector<std::string> found;
  fs::recursive_directory_iterator walk(fretsheaf::test::project_folder());
  for (auto entry = fs::begin(walk); entry != fs::end(walk); ++entry) {
    if (is_ignored(entry->path())) {
      entry.disable_recursion_pending();
    } else if (entry->is_regular_file()) {
      found.push_back(entry->path().lexically_relative(fretsheaf::test::project_folder()).string());
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::vector<std::string> files_below(const std::string& folder, const std::vector<std::string>& endings) {
  std::vector<std::string> found = project_files();
  const auto other = [&](const std::string& path) {
    const auto ends = [&](const std::string& ending) { return path.ends_with(ending); };
    return !path.starts_with(folder + "/") || std::none_of(endings.begin(), endings.end(), ends);
  };
  found.erase(std::remove_if(found.begin(), found.end(), other), found.end());
  return found;
}
