#pragma once

#include <memory>
#include <string>

#include "platform/system.h"

namespace fretsheaf::platform {

// `DiskSystem::lock`.
FileResult<std::unique_ptr<Hold>> lock_file(const std::string& path, Sharing sharing);

}  // namespace fretsheaf::platform
