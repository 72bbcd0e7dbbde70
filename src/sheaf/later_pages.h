#pragma once

#include <string>

#include "platform/system.h"
#include "sheaf/workshop.h"

namespace fretsheaf::sheaf {

// Removes the SVG pages that an earlier, longer handout left behind the last page of this one. `handouts` is the path
// of its outputs up to their suffixes.
void remove_later_pages(const std::string& handouts, const Made& made, platform::System& system);

}  // namespace fretsheaf::sheaf
