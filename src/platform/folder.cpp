#include "platform/folder.h"

#include <dirent.h>
#include <sys/stat.h>

#include <algorithm>
#include <cerrno>

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

std::string folder_of(const std::string& path) {
  const auto slash = path.rfind('/');
  return slash == std::string::npos ? "." : path.substr(0, slash + 1);
}

int make_folders(const std::string& folder) {
  struct stat found {};
  if (::stat(folder.c_str(), &found) == 0) return 0;
  for (auto slash = folder.find('/', 1); slash != std::string::npos; slash = folder.find('/', slash + 1)) {
    const std::string part = folder.substr(0, slash);
    if (::mkdir(part.c_str(), 0777) != 0 && errno != EEXIST) return errno;
  }
  return 0;
}

}  // namespace fretsheaf::platform
