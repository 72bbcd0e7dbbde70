#pragma once

#include <string>

#include "platform/machine.h"

namespace fretsheaf::platform {

// `DiskSystem::lock`.
Lock lock_file(const std::string& path, Sharing sharing);

}  // namespace fretsheaf::platform
