#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace fretsheaf::platform {

// Why a file could not be had, in the words that a teacher reads after the file's name ("is a folder").
struct FileError {
  enum class Kind { missing, folder, not_allowed, too_large, other };
  Kind kind = Kind::other;
  std::string what;
};

template <typename T>
using FileResult = std::variant<T, FileError>;

// A file's bytes that nobody changes; they stay as long as any copy of this.
struct SharedBytes {
  std::shared_ptr<const void> owner;
  std::string_view bytes;
};

// All that the program asks of the machine it runs on. Everything else is computation. `DiskSystem` is the real one;
// `MemorySystem` its twin for tests.
class System {
 public:
  virtual ~System() = default;

  // The whole file; `limit` bytes at the most (more is `too_large`, found before reading). `-` is standard input.
  virtual FileResult<std::string> read(const std::string& path, std::size_t limit) const = 0;

  // As `read`, for large files that are read here and there (fonts): a system that can maps the file into memory and
  // copies nothing.
  virtual FileResult<SharedBytes> view(const std::string& path, std::size_t limit) const {
    FileResult<std::string> whole = read(path, limit);
    if (const auto* failed = std::get_if<FileError>(&whole)) return *failed;
    const auto owner = std::make_shared<const std::string>(std::move(std::get<std::string>(whole)));
    return SharedBytes{owner, *owner};
  }

  // Whole or nothing: writes a temporary file in the target's folder, syncs it and renames it over `path`, whose
  // earlier content stays until then. Makes missing folders. nullopt is success. `-` is standard output.
  virtual std::optional<FileError> write(const std::string& path, std::string_view bytes) = 0;

  virtual bool exists(const std::string& path) const = 0;

  // Removes a file; a file that is not there is no error.
  virtual std::optional<FileError> remove(const std::string& path) = 0;

  // The names (not paths) of the entries of a folder, sorted by bytes; empty where there is none.
  virtual std::vector<std::string> list(const std::string& folder) const = 0;

  // Where the program's own data lies ("templates", "fonts"): a path that ends in `name`.
  virtual std::string data_path(std::string_view name) const = 0;

  // The path of a font file by its bare file name, in the folders where Debian's packages put fonts; empty if missing.
  virtual std::string font_path(std::string_view file_name) const = 0;
};

}  // namespace fretsheaf::platform
