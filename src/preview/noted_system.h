#pragma once

#include <set>
#include <string>

#include "platform/system.h"

namespace fretsheaf::preview {

// Passes everything on to the machine, and notes each path that was asked about, whether anything was there or not: a
// sheaf.toml or a logo that comes later changes a page as well.
class NotedSystem final : public platform::System {
 public:
  explicit NotedSystem(platform::System& machine) : machine_(machine) {}

  // As they were given. The caller may forget them.
  std::set<std::string>& paths() const { return paths_; }

  platform::FileResult<std::string> read(const std::string& path, std::size_t limit) const override {
    return machine_.read(noted(path), limit);
  }
  platform::FileResult<platform::SharedBytes> view(const std::string& path, std::size_t limit) const override {
    return machine_.view(noted(path), limit);
  }
  std::optional<platform::FileError> write(const std::string& path, std::string_view bytes) override {
    return machine_.write(path, bytes);
  }
  bool exists(const std::string& path) const override { return machine_.exists(noted(path)); }
  std::string real_path(const std::string& path) const override { return machine_.real_path(path); }
  std::optional<platform::FileError> remove(const std::string& path) override { return machine_.remove(path); }
  std::vector<std::string> list(const std::string& folder) const override { return machine_.list(folder); }
  std::string data_path(std::string_view name) const override { return machine_.data_path(name); }
  std::string font_path(std::string_view file_name) const override { return machine_.font_path(file_name); }

 private:
  const std::string& noted(const std::string& path) const {
    paths_.insert(path);
    return path;
  }

  platform::System& machine_;
  mutable std::set<std::string> paths_;  // noting changes nothing that the reader can see
};

}  // namespace fretsheaf::preview
