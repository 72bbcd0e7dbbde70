#pragma once

#include <string>
#include <vector>

#include "sheaf/traced_system.h"

namespace fretsheaf::command {

// The rule that Make and Ninja read: what was made, a colon, what it was made from. Blanks and signs that mean something
// to them are written so that both read them back.
std::string depfile(const std::vector<std::string>& made, const sheaf::Inputs& inputs);

}  // namespace fretsheaf::command
