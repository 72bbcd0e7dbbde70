#include "lesson/keys_paths.h"

#include <algorithm>
#include <vector>

namespace fretsheaf::lesson {

std::string folder_of(std::string_view path) {
  const auto slash = path.rfind('/');
  return slash == std::string_view::npos ? std::string() : std::string(path.substr(0, slash + 1));
}

std::optional<std::string> folder_above(std::string_view folder) {
  const std::string normal = normal_path(folder);
  if (normal == "/") return {};
  const bool climbs = normal.empty() || normal == ".." || normal.ends_with("/..");
  if (climbs) return (normal.empty() ? normal : normal + "/") + "../";
  return folder_of(normal);
}

std::string normal_path(std::string_view path) {
  const bool absolute = path.starts_with('/');
  std::vector<std::string_view> parts;
  for (std::size_t at = 0; at < path.size();) {
    const auto end = std::min(path.find('/', at), path.size());
    const auto part = path.substr(at, end - at);
    at = end + 1;
    if (part.empty() || part == ".") continue;
    const bool climbs = part == "..";
    if (climbs && !parts.empty() && parts.back() != "..") {
      parts.pop_back();
    } else if (!climbs || !absolute) {
      parts.push_back(part);
    }
  }
  std::string result = absolute ? "/" : "";
  for (std::size_t i = 0; i < parts.size(); ++i) result += (i > 0 ? "/" : "") + std::string(parts[i]);
  return result;
}

bool is_inside(std::string_view path, std::string_view folder) {
  const std::string inner = normal_path(path);
  const std::string outer = normal_path(folder);
  if (outer.empty()) return !inner.starts_with('/') && inner != ".." && !inner.starts_with("../");
  const std::string start = outer.ends_with('/') ? outer : outer + "/";
  // A folder that climbs holds nothing that climbs higher.
  return inner.starts_with(start) && !std::string_view(inner).substr(start.size()).starts_with("..");
}

}  // namespace fretsheaf::lesson
