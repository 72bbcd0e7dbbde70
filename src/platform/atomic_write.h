#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "platform/system.h"

namespace fretsheaf::platform {

// `DiskSystem::write` for all but standard output: whole or nothing.
std::optional<FileError> write_atomically(const std::string& path, std::string_view bytes);

// `DiskSystem::sweep`: removes the temporary files of writers that live no more.
void sweep_temporaries(const std::string& folder);

}  // namespace fretsheaf::platform
