#include "platform/fonts.h"

#include <sys/stat.h>

#include "platform/folder.h"

namespace fretsheaf::platform {
namespace {

// Deeper than any package lays its fonts; a link that leads back up ends here.
constexpr int deepest = 8;

bool is_file(const std::string& path) {
  struct stat found {};
  return ::stat(path.c_str(), &found) == 0 && S_ISREG(found.st_mode);
}

std::string find_below(std::string_view file_name, const std::string& folder, int depth) {
  const std::string inside = folder + "/";
  std::string here = inside + std::string(file_name);
  if (is_file(here)) return here;
  if (depth == deepest) return {};
  for (const std::string& name : folder_names(folder)) {
    std::string found = find_below(file_name, inside + name, depth + 1);
    if (!found.empty()) return found;
  }
  return {};
}

}  // namespace

std::string find_font(std::string_view file_name, std::span<const std::string_view> known, const std::string& root) {
  if (file_name.empty() || file_name.find('/') != std::string_view::npos) return {};
  for (const std::string_view folder : known) {
    std::string path = std::string(folder) + "/" + std::string(file_name);
    if (is_file(path)) return path;
  }
  return find_below(file_name, root, 0);
}

}  // namespace fretsheaf::platform
