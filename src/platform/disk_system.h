#pragma once

#include "platform/machine.h"

namespace fretsheaf::platform {

// The machine itself (POSIX). Its own data lie where FRETSHEAF_DATA says, else in ../share/fretsheaf beside an
// installed program's folder, else in the checkout that the program was built from.
class DiskSystem final : public Machine {
 public:
  FileResult<std::string> read(const std::string& path, std::size_t limit) const override;

  // Maps a regular file. It must not be cut short while it is in use, as no package does to its fonts.
  FileResult<SharedBytes> view(const std::string& path, std::size_t limit) const override;

  // A file that was there keeps its permissions; a symbolic link stays one, and what it points to is written. What is
  // no regular file (a device, a pipe) is written straight.
  std::optional<FileError> write(const std::string& path, std::string_view bytes) override;

  std::optional<FileError> append(const std::string& path, std::string_view bytes, bool synced) override;

  // By flock(2), which on Linux reaches the other machines of a network disk too.
  Lock lock(const std::string& path, Sharing sharing) override;
  void sweep(const std::string& folder) override;
  bool exists(const std::string& path) const override;
  std::optional<FileStatus> status(const std::string& path) const override;
  std::string absolute(const std::string& path) const override;
  std::optional<FileError> remove(const std::string& path) override;
  std::vector<std::string> list(const std::string& folder) const override;
  std::string data_path(std::string_view name) const override;
  std::string font_path(std::string_view file_name) const override;
  std::string identity() const override;
  bool spans_processes() const override { return true; }
};

}  // namespace fretsheaf::platform
