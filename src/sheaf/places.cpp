#include "sheaf/places.h"

#include <filesystem>

namespace fretsheaf::sheaf {

namespace {

bool is_under(std::string_view path, std::string_view folder) {
  if (folder == "/") return path.starts_with('/');
  return path.starts_with(folder) && (path.size() == folder.size() || path[folder.size()] == '/');
}

// `path` from `folder` on, by their letters: both are without links.
std::string from(const std::string& path, const std::string& folder) {
  if (path != folder && is_under(path, folder)) return path.substr(folder == "/" ? 1 : folder.size() + 1);
  return std::filesystem::path(path).lexically_relative(folder).string();
}

// Whether nothing in the path leads up or stays.
bool is_plain(std::string_view path) {
  return path != "." && path != ".." && path.find("./") == std::string_view::npos &&
         path.find("//") == std::string_view::npos && !path.ends_with("/.") && !path.ends_with("/..");
}

}  // namespace

std::string joined(const std::string& folder, const std::string& name) {
  if (folder.empty() || folder == ".") return name;
  return folder + (folder.ends_with('/') ? "" : "/") + name;
}

std::string folder_part(const std::string& path) {
  const auto slash = path.rfind('/');
  if (slash == 0) return "/";
  return slash == std::string::npos ? std::string() : path.substr(0, slash);
}

Places::Places(const std::string& folder, const std::string& root, const std::string& top,
               const platform::Machine& system)
    : folder_(folder),
      root_(root),
      whole_folder_(system.absolute(folder)),
      whole_root_(system.absolute(root)),
      whole_top_(system.absolute(top)),
      system_(system) {
  recorded_folder_ = recorded(folder);
}

std::string Places::recorded(const std::string& path) const {
  // The common case is told by letters alone: asking the machine about each of many thousand paths takes its time.
  const std::string inside = joined(folder_, "");
  const std::string rest = path.starts_with(inside) ? path.substr(inside.size()) : std::string();
  const bool in_folder = !rest.empty() && !rest.starts_with('/') && is_plain(rest);
  std::string whole = in_folder ? joined(whole_folder_, rest) : system_.absolute(path);
  if (is_under(whole, whole_folder_) || is_under(whole, whole_root_) || is_under(whole, whole_top_)) {
    return from(whole, whole_root_);
  }
  return whole;
}

std::string Places::working(const std::string& recorded) const {
  return recorded.starts_with('/') ? recorded : joined(root_, recorded);
}

bool Places::is_in_folder(const std::string& recorded) const {
  if (recorded_folder_ == ".") return !recorded.starts_with("../") && !recorded.starts_with('/');
  // "../.." lies under ".." by its letters alone.
  return is_under(recorded, recorded_folder_) && !recorded.substr(recorded_folder_.size()).starts_with("/..");
}

}  // namespace fretsheaf::sheaf
