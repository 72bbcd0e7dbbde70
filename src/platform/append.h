#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "platform/system.h"

namespace fretsheaf::platform {

// `DiskSystem::append`.
std::optional<FileError> append_to(const std::string& path, std::string_view bytes, bool synced);

}  // namespace fretsheaf::platform
