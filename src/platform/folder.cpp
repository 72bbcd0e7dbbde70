#include "platform/folder.h"

#include <dirent.h>

#include <algorithm>

namespace fretsheaf::platform {

std::vector<std::string> folder_names(const std::string& folder) {
  std::vector<std::string> names;
  DIR* stream = ::opendir(folder.c_str());
  if (stream == nullptr) return names;
  while (const dirent* entry = ::readdir(stream)) {
    std::string name(entry->d_name);
    if (name != "." && name != "..") names.push_back(std::move(name));
  }
  ::closedir(stream);
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace fretsheaf::platform
