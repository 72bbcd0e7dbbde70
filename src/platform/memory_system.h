#pragma once

#include <map>
#include <memory>
#include <string>

#include "platform/machine.h"

namespace fretsheaf::platform {

// The twin of `DiskSystem` for tests: files are entries of a map, folders are what lies before a `/` in their names.
// What is to fail is put into `read_failures` and `write_failures`.
class MemorySystem final : public Machine {
 public:
  MemorySystem() = default;

  // Files, data and fonts that are not in memory are looked for in `beneath`, which must live longer; nothing is ever
  // written there.
  explicit MemorySystem(const System& beneath) : beneath_(&beneath) {}

  FileResult<std::string> read(const std::string& path, std::size_t limit) const override;
  FileResult<SharedBytes> view(const std::string& path, std::size_t limit) const override;
  std::optional<FileError> write(const std::string& path, std::string_view bytes) override;
  std::optional<FileError> append(const std::string& path, std::string_view bytes, bool synced) override;
  Lock lock(const std::string& path, Sharing sharing) override;
  void sweep(const std::string&) override {}
  bool exists(const std::string& path) const override;
  std::optional<FileStatus> status(const std::string& path) const override;  // of what is in memory
  std::string absolute(const std::string& path) const override;  // as if it ran in the root folder
  std::optional<FileError> remove(const std::string& path) override;
  std::vector<std::string> list(const std::string& folder) const override;
  std::string data_path(std::string_view name) const override;
  std::string font_path(std::string_view file_name) const override;
  std::string identity() const override { return build; }
  bool spans_processes() const override { return false; }

  std::map<std::string, std::string> files;               // path to bytes
  std::map<std::string, FileError> read_failures;         // path to what reading it gives
  std::map<std::string, FileError> write_failures;        // path to what writing or removing it gives
  std::map<std::string, std::string, std::less<>> fonts;  // bare file name to path
  std::map<std::string, std::int64_t> changed;            // path to the time of its last write; 0 where none is told
  std::int64_t clock = 1;                                 // each write takes one tick
  std::string build = "a build";
  std::string standard_input;
  std::string standard_output;

 private:
  bool is_folder(const std::string& path) const;

  // Locks by path: how many share one, or -1. Outlives the system where a hold does.
  std::shared_ptr<std::map<std::string, int>> locks_ = std::make_shared<std::map<std::string, int>>();
  const System* beneath_ = nullptr;
};

}  // namespace fretsheaf::platform
