#include "platform/memory_system.h"

#include <algorithm>
#include <filesystem>

#include "platform/file_error.h"

namespace fretsheaf::platform {
namespace {

std::string with_slash(std::string folder) {
  if (folder == "." || folder.empty()) return {};
  if (folder.back() != '/') folder += '/';
  return folder;
}

}  // namespace

bool MemorySystem::is_folder(const std::string& path) const {
  const std::string prefix = with_slash(path);
  const auto first = files.lower_bound(prefix);
  return first != files.end() && first->first.starts_with(prefix);
}

FileResult<std::string> MemorySystem::read(const std::string& path, std::size_t limit) const {
  if (const auto failure = read_failures.find(path); failure != read_failures.end()) return failure->second;
  const auto file = files.find(path);
  if (file == files.end() && path != "-") {
    if (is_folder(path)) return folder_error();
    if (beneath_ != nullptr) return beneath_->read(path, limit);
    return missing_error();
  }
  const std::string& bytes = path == "-" ? standard_input : file->second;
  if (bytes.size() > limit) return too_large_error(limit);
  return bytes;
}

FileResult<SharedBytes> MemorySystem::view(const std::string& path, std::size_t limit) const {
  const bool here = path == "-" || files.contains(path) || read_failures.contains(path) || is_folder(path);
  return here || beneath_ == nullptr ? System::view(path, limit) : beneath_->view(path, limit);
}

std::optional<FileError> MemorySystem::write(const std::string& path, std::string_view bytes) {
  if (const auto failure = write_failures.find(path); failure != write_failures.end()) return failure->second;
  if (path == "-") {
    standard_output += bytes;
    return std::nullopt;
  }
  if (is_folder(path) || path.ends_with('/')) return folder_error();
  files[path] = std::string(bytes);
  changed[path] = clock++;
  return std::nullopt;
}

std::optional<FileError> MemorySystem::append(const std::string& path, std::string_view bytes, bool) {
  const auto file = files.find(path);
  return write(path, (file == files.end() ? std::string() : file->second) + std::string(bytes));
}

Lock MemorySystem::lock(const std::string& path, Sharing sharing) {
  class MemoryHold final : public Hold {
   public:
    MemoryHold(std::shared_ptr<std::map<std::string, int>> locks, std::string path)
        : locks_(std::move(locks)), path_(std::move(path)) {}
    MemoryHold(const MemoryHold&) = delete;
    MemoryHold& operator=(const MemoryHold&) = delete;
    ~MemoryHold() override {
      int& holders = (*locks_)[path_];
      holders = holders < 0 ? 0 : holders - 1;
    }

   private:
    std::shared_ptr<std::map<std::string, int>> locks_;
    std::string path_;
  };
  if (const auto failure = write_failures.find(path); failure != write_failures.end()) return failure->second;
  int& holders = (*locks_)[path];
  if (holders < 0 || (holders > 0 && sharing == Sharing::alone)) return InUse{};
  if (!files.contains(path)) files[path] = {};
  holders = sharing == Sharing::alone ? -1 : holders + 1;
  return std::make_unique<MemoryHold>(locks_, path);
}

std::optional<FileStatus> MemorySystem::status(const std::string& path) const {
  FileStatus status;
  if (const auto file = files.find(path); file != files.end()) {
    status.size = file->second.size();
    if (const auto when = changed.find(path); when != changed.end()) status.changed = when->second;
    return status;
  }
  status.kind = FileStatus::Kind::folder;
  return is_folder(path) ? std::optional(status) : std::nullopt;
}

std::string MemorySystem::absolute(const std::string& path) const {
  std::string text = (std::filesystem::path("/") / path).lexically_normal().string();
  while (text.size() > 1 && text.back() == '/') text.pop_back();
  return text;
}

bool MemorySystem::exists(const std::string& path) const {
  return files.contains(path) || is_folder(path) || (beneath_ != nullptr && beneath_->exists(path));
}

std::optional<FileError> MemorySystem::remove(const std::string& path) {
  if (const auto failure = write_failures.find(path); failure != write_failures.end()) return failure->second;
  if (!files.contains(path) && is_folder(path)) return folder_error();
  files.erase(path);
  return std::nullopt;
}

std::vector<std::string> MemorySystem::list(const std::string& folder) const {
  const std::string prefix = with_slash(folder);
  std::vector<std::string> names;
  if (beneath_ != nullptr) names = beneath_->list(folder);
  for (auto file = files.lower_bound(prefix); file != files.end() && file->first.starts_with(prefix); ++file) {
    const std::string rest = file->first.substr(prefix.size());
    names.push_back(rest.substr(0, rest.find('/')));
  }
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

std::string MemorySystem::data_path(std::string_view name) const {
  std::string path = "/data/" + std::string(name);
  if (beneath_ != nullptr && !is_folder(path) && !files.contains(path)) return beneath_->data_path(name);
  return path;
}

std::string MemorySystem::font_path(std::string_view file_name) const {
  if (const auto font = fonts.find(file_name); font != fonts.end()) return font->second;
  return beneath_ != nullptr ? beneath_->font_path(file_name) : std::string();
}

}  // namespace fretsheaf::platform
