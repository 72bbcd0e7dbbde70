#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace fretsheaf::platform {

// Why a file could not be had, in the words that a teacher reads after the file's name ("is a folder").
struct FileError {
  enum class Kind { missing, folder, not_allowed, too_large, in_use, other };
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

// What lies at a path.
struct FileStatus {
  enum class Kind { file, folder, other };
  Kind kind = Kind::file;
  bool is_link = false;  // a symbolic link leads there; the rest is of what it leads to
  std::uint64_t size = 0;
  std::int64_t changed = 0;  // when its content last changed: nanoseconds since 1970, by the machine's own clock
};

// A lock, held as long as this lives or its process does.
class Hold {
 public:
  Hold() = default;
  Hold(const Hold&) = delete;
  Hold& operator=(const Hold&) = delete;
  virtual ~Hold() = default;
};

// Whether a lock keeps everybody else out, or only those who want it alone.
enum class Sharing { alone, with_others };

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

  // Adds to the end of a file in one piece, making it and its folders where they are missing; on the disk when it
  // returns where it is `synced`, else when the machine likes.
  virtual std::optional<FileError> append(const std::string& path, std::string_view bytes, bool synced) = 0;

  // Takes the lock that a file stands for (made where it is missing, and never removed), waiting for nobody: `in_use`
  // where another process has it. It is advisory: only those who ask for it are kept out.
  virtual FileResult<std::unique_ptr<Hold>> lock(const std::string& path, Sharing sharing) = 0;

  // Removes what a `write` into this folder left that was cut short (by a kill, a power cut); one that goes on is left
  // alone.
  virtual void sweep(const std::string& folder) = 0;

  virtual bool exists(const std::string& path) const = 0;

  // nullopt where nothing is there, or it may not be looked at.
  virtual std::optional<FileStatus> status(const std::string& path) const = 0;

  // The path from the root on, without links, `.` and `..`; also of what is not there yet.
  virtual std::string absolute(const std::string& path) const = 0;

  // Removes a file; a file that is not there is no error.
  virtual std::optional<FileError> remove(const std::string& path) = 0;

  // The names (not paths) of the entries of a folder, sorted by bytes; empty where there is none.
  virtual std::vector<std::string> list(const std::string& folder) const = 0;

  // Where the program's own data lies ("templates", "fonts"): a path that ends in `name`.
  virtual std::string data_path(std::string_view name) const = 0;

  // The path of a font file by its bare file name, in the folders where Debian's packages put fonts; empty if missing.
  virtual std::string font_path(std::string_view file_name) const = 0;

  // What tells this build of the program, with the libraries that it runs on, from any other.
  virtual std::string identity() const = 0;

  // Whether what one process writes is seen by another.
  virtual bool spans_processes() const = 0;
};

}  // namespace fretsheaf::platform
