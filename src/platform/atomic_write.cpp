#include "platform/atomic_write.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>

#include "platform/descriptor.h"
#include "platform/file_error.h"
#include "platform/folder.h"
#include "platform/real_path.h"

namespace fretsheaf::platform {
namespace {

// What lies at the target before anything is written.
struct Target {
  std::string path;            // behind symbolic links
  std::optional<mode_t> mode;  // of the file that is there
  bool special = false;        // a device or a pipe
};

constexpr std::string_view temporary_begins = ".fretsheaf-";
constexpr std::string_view temporary_ends = ".tmp";

// A temporary file is locked as long as its writer lives: by that the sweeper tells the stale ones. The sweeper may
// have come between making and locking it, and then it has no name any more.
bool lock_as_own(const Descriptor& file) {
  ::flock(file.number(), LOCK_EX);  // where a disk has no locks, nothing is lost but the sweeper's patience
  struct stat found {};
  return ::fstat(file.number(), &found) != 0 || found.st_nlink > 0;
}

// Creating it afresh (never opening what is there) keeps two runs, and a link laid by somebody else, apart. The name
// does not grow with the target's, which may be as long as a name can be.
Descriptor open_temporary(const std::string& folder, std::string& path) {
  constexpr int attempts = 1000;
  const std::string stem = folder + "/" + std::string(temporary_begins) + std::to_string(::getpid()) + "-";
  for (int n = 0; n < attempts; ++n) {
    path = stem + std::to_string(n) + std::string(temporary_ends);
    Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
    if (file.is_open() ? lock_as_own(file) : errno != EEXIST) return file;
  }
  return Descriptor(-1);
}

int fill_and_sync(Descriptor file, std::string_view bytes, std::optional<mode_t> mode) {
  if (mode && ::fchmod(file.number(), *mode & 07777) != 0) return errno;
  if (const int failed = write_all(file.number(), bytes)) return failed;
  if (::fsync(file.number()) != 0) return errno;
  return file.close() ? 0 : errno;
}

int write_special(const std::string& path, std::string_view bytes) {
  const Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
  return file.is_open() ? write_all(file.number(), bytes) : errno;
}

int replace(const Target& target, std::string_view bytes) {
  const std::string folder = folder_of(target.path);
  if (const int failed = make_folders(folder)) return failed;
  std::string temporary;
  Descriptor file = open_temporary(folder, temporary);
  if (!file.is_open()) return errno;
  // A second name for the open file keeps its lock until it is in place.
  const Descriptor locked(::fcntl(file.number(), F_DUPFD_CLOEXEC, 0));
  int failed = fill_and_sync(std::move(file), bytes, target.mode);
  if (failed == 0 && ::rename(temporary.c_str(), target.path.c_str()) != 0) failed = errno;
  if (failed != 0) ::unlink(temporary.c_str());
  return failed;
}

}  // namespace

std::optional<FileError> write_atomically(const std::string& path, std::string_view bytes) {
  if (path.empty()) return write_error(ENOENT);
  Target target{path, std::nullopt, false};
  struct stat found {};
  if (::stat(path.c_str(), &found) == 0) {
    if (S_ISDIR(found.st_mode)) return folder_error();
    // Renaming over a file asks nobody whether it may be written, and a teacher may have locked it on purpose.
    if (::access(path.c_str(), W_OK) != 0) return write_error(errno);
    target = {real_path(path), found.st_mode, !S_ISREG(found.st_mode)};
  } else if (path.back() == '/') {
    return folder_error();
  }
  const int failed = target.special ? write_special(path, bytes) : replace(target, bytes);
  if (failed != 0) return write_error(failed);
  return std::nullopt;
}

void sweep_temporaries(const std::string& folder) {
  for (const std::string& name : folder_names(folder)) {
    if (!name.starts_with(temporary_begins) || !name.ends_with(temporary_ends)) continue;
    std::string path = folder;
    path.append("/").append(name);
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW));
    if (file.is_open() && ::flock(file.number(), LOCK_EX | LOCK_NB) == 0) ::unlink(path.c_str());
  }
}

}  // namespace fretsheaf::platform
