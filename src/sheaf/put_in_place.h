#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "platform/system.h"

namespace fretsheaf::sheaf {

// Writes a file of the program's own making, whole or not at all. A symbolic link in its place is replaced, not
// followed: lessons from strangers may come with links, and nothing is written outside of the folder that is asked for.
std::optional<platform::FileError> put_in_place(platform::System& system, const std::string& path,
                                                std::string_view bytes);

}  // namespace fretsheaf::sheaf
