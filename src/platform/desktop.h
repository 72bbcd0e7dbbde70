#pragma once

#include <string>

namespace fretsheaf::platform {

// Asks the desktop to open an address with whatever it opens such addresses with (xdg-open), and waits for nothing.
// False where there is no such program.
bool open_by_desktop(const std::string& address);

}  // namespace fretsheaf::platform
