#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "platform/system.h"

namespace fretsheaf::platform {

// Passes everything on to the machine: for those that watch some of it go by.
class PassingSystem : public System {
 public:
  // The machine must outlive it.
  explicit PassingSystem(System& machine) : machine_(machine) {}

  FileResult<std::string> read(const std::string& path, std::size_t limit) const override {
    return machine_.read(path, limit);
  }
  FileResult<SharedBytes> view(const std::string& path, std::size_t limit) const override {
    return machine_.view(path, limit);
  }
  std::optional<FileError> write(const std::string& path, std::string_view bytes) override {
    return machine_.write(path, bytes);
  }
  bool exists(const std::string& path) const override { return machine_.exists(path); }
  std::string real_path(const std::string& path) const override { return machine_.real_path(path); }
  std::optional<FileError> remove(const std::string& path) override { return machine_.remove(path); }
  std::vector<std::string> list(const std::string& folder) const override { return machine_.list(folder); }
  std::string data_path(std::string_view name) const override { return machine_.data_path(name); }
  std::string font_path(std::string_view file_name) const override { return machine_.font_path(file_name); }

 protected:
  const System& machine() const { return machine_; }

 private:
  System& machine_;
};

}  // namespace fretsheaf::platform
