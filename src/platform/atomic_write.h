#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "platform/system.h"

namespace fretsheaf::platform {

// `DiskSystem::write` for all but standard output: whole or nothing.
std::optional<FileError> write_atomically(const std::string& path, std::string_view bytes);

}  // namespace fretsheaf::platform
