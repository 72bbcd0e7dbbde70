#include "platform/folder_watch.h"

#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cstring>

namespace fretsheaf::platform {
namespace {

// A file that is only made has nothing in it yet: its end of writing tells of it. A folder that is made has no such
// end.
bool tells(const inotify_event& event) {
  return event.len > 0 && ((event.mask & IN_CREATE) == 0 || (event.mask & IN_ISDIR) != 0);
}

}  // namespace

FolderWatch::FolderWatch() : queue_(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {}

bool FolderWatch::follow(const std::string& folder) {
  if (watches_.contains(folder)) return true;
  constexpr std::uint32_t what =
      IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_DELETE | IN_CREATE | IN_ONLYDIR | IN_EXCL_UNLINK;
  const int watch = ::inotify_add_watch(queue_.number(), folder.c_str(), what);
  if (watch < 0) return false;
  // A folder that moved and is followed by its new path keeps its watch.
  if (const auto earlier = folders_.find(watch); earlier != folders_.end()) watches_.erase(earlier->second);
  folders_[watch] = folder;
  watches_[folder] = watch;
  return true;
}

FolderWatch::Changes FolderWatch::changes() {
  Changes changes;
  alignas(inotify_event) std::array<char, 16'384> buffer;
  while (true) {
    const ssize_t got = ::read(queue_.number(), buffer.data(), buffer.size());
    if (got <= 0) return changes;
    std::size_t place = 0;
    while (place < static_cast<std::size_t>(got)) {
      inotify_event event;
      std::memcpy(&event, buffer.data() + place, sizeof event);
      const char* const name = buffer.data() + place + sizeof event;
      place += sizeof event + event.len;
      if ((event.mask & IN_Q_OVERFLOW) != 0) changes.lost = true;
      const auto folder = folders_.find(event.wd);
      if (folder == folders_.end()) continue;
      if ((event.mask & IN_IGNORED) != 0) {  // the folder is gone; one that comes in its place is followed anew
        watches_.erase(folder->second);
        folders_.erase(folder);
      } else if (tells(event)) {
        changes.paths.push_back((folder->second == "/" ? "" : folder->second) + "/" + name);
      }
    }
  }
}

}  // namespace fretsheaf::platform
