#pragma once

#include <map>
#include <string>
#include <vector>

#include "platform/descriptor.h"

namespace fretsheaf::platform {

// Tells what changes in folders, without asking again and again (inotify): files that were written and closed, renamed
// into place, moved away or removed, and folders that came or went. Not what lies in folders below.
class FolderWatch {
 public:
  FolderWatch();

  // From now on this folder too; its path is what changes are told by. False where there is no such folder, or the
  // machine watches no more. Again for one that is watched already is nothing.
  bool follow(const std::string& folder);

  // Ready to be read when something has changed.
  int descriptor() const { return queue_.number(); }

  // The paths (FOLDER/NAME) of what has changed since the last call, in that order; `lost` where so much did that some
  // of it is not known.
  struct Changes {
    std::vector<std::string> paths;
    bool lost = false;
  };
  Changes changes();

 private:
  Descriptor queue_;
  std::map<int, std::string> folders_;  // by the number of the watch
  std::map<std::string, int> watches_;
};

}  // namespace fretsheaf::platform
