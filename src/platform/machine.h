#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "platform/system.h"

namespace fretsheaf::platform {

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

// Another process has the lock.
struct InUse {};

using Lock = std::variant<std::unique_ptr<Hold>, InUse, FileError>;

// What work on whole folders asks of the machine beyond what a lesson needs: other runs may go on in them, and some may
// have been cut short.
class Machine : public System {
 public:
  // nullopt where nothing is there, or it may not be looked at.
  virtual std::optional<FileStatus> status(const std::string& path) const = 0;

  // The path from the root on, without links, `.` and `..`; also of what is not there yet.
  virtual std::string absolute(const std::string& path) const = 0;

  // Adds to the end of a file in one piece, making it and its folders where they are missing; on the disk when it
  // returns where it is `synced`, else when the machine likes.
  virtual std::optional<FileError> append(const std::string& path, std::string_view bytes, bool synced) = 0;

  // Takes the lock that a file stands for (made where it is missing, and never removed), waiting for nobody. It is
  // advisory: only those who ask for it are kept out.
  virtual Lock lock(const std::string& path, Sharing sharing) = 0;

  // Removes what a `write` into this folder left that was cut short (by a kill, a power cut); one that goes on is left
  // alone.
  virtual void sweep(const std::string& folder) = 0;

  // What tells this build of the program, with the libraries that it runs on, from any other.
  virtual std::string identity() const = 0;

  // Whether what one process writes is seen by another.
  virtual bool spans_processes() const = 0;
};

}  // namespace fretsheaf::platform
