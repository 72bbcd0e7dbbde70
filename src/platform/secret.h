#pragma once

#include <optional>
#include <string>

namespace fretsheaf::platform {

// 128 bits that nobody can guess, as 32 hexadecimal digits, from the kernel's own generator; nullopt where it has none.
std::optional<std::string> new_secret();

}  // namespace fretsheaf::platform
