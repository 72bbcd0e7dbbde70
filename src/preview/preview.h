#pragma once

#include <functional>
#include <optional>
#include <string>

#include "platform/machine.h"

// A handout in a browser, drawn again whenever a file that it is made from is saved.
namespace fretsheaf::preview {

// Serves a lesson's page, or a folder's, until the program is asked to stop (Ctrl-C); tells the address when it can be
// opened. nullopt when it has ended as it should, else why it could not begin. REQUIRES: `path` is there.
std::optional<std::string> preview(const std::string& path, int port, platform::Machine& machine,
                                   const std::function<void(const std::string& address)>& ready);

}  // namespace fretsheaf::preview
