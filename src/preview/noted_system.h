#pragma once

#include <set>
#include <string>

#include "platform/passing_system.h"

namespace fretsheaf::preview {

// Passes everything on to the machine, and notes each path that was asked about, whether anything was there or not: a
// sheaf.toml or a logo that comes later changes a page as well.
class NotedSystem final : public platform::PassingSystem {
 public:
  using PassingSystem::PassingSystem;

  // As they were given. The caller may forget them.
  std::set<std::string>& paths() const { return paths_; }

  platform::FileResult<std::string> read(const std::string& path, std::size_t limit) const override {
    return machine().read(noted(path), limit);
  }
  platform::FileResult<platform::SharedBytes> view(const std::string& path, std::size_t limit) const override {
    return machine().view(noted(path), limit);
  }
  bool exists(const std::string& path) const override { return machine().exists(noted(path)); }

 private:
  const std::string& noted(const std::string& path) const {
    paths_.insert(path);
    return path;
  }

  mutable std::set<std::string> paths_;  // noting changes nothing that the reader can see
};

}  // namespace fretsheaf::preview
