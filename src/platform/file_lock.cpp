#include "platform/file_lock.h"

#include <fcntl.h>
#include <sys/file.h>

#include <cerrno>

#include "platform/descriptor.h"
#include "platform/file_error.h"
#include "platform/folder.h"

namespace fretsheaf::platform {
namespace {

// The kernel lets go when the last copy of the descriptor is closed, however its process ends.
class FileHold final : public Hold {
 public:
  explicit FileHold(Descriptor file) : file_(std::move(file)) {}

 private:
  Descriptor file_;
};

}  // namespace

Lock lock_file(const std::string& path, Sharing sharing) {
  if (const int failed = make_folders(folder_of(path))) return write_error(failed);
  Descriptor file(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666));
  if (!file.is_open()) return write_error(errno);
  const int kind = sharing == Sharing::alone ? LOCK_EX : LOCK_SH;
  if (::flock(file.number(), kind | LOCK_NB) != 0) {
    if (errno == EWOULDBLOCK) return InUse{};
    return write_error(errno);
  }
  return std::make_unique<FileHold>(std::move(file));
}

}  // namespace fretsheaf::platform
