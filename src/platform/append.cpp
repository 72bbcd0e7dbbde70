#include "platform/append.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>

#include "platform/descriptor.h"
#include "platform/file_error.h"
#include "platform/folder.h"

namespace fretsheaf::platform {

std::optional<FileError> append_to(const std::string& path, std::string_view bytes, bool synced) {
  if (const int failed = make_folders(folder_of(path))) return write_error(failed);
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_NONBLOCK | O_CLOEXEC, 0666));
  if (!file.is_open()) return write_error(errno);
  if (const int failed = write_all(file.number(), bytes)) return write_error(failed);
  if (synced && ::fdatasync(file.number()) != 0) return write_error(errno);
  if (!file.close()) return write_error(errno);
  return std::nullopt;
}

}  // namespace fretsheaf::platform
