#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command/command.h"
#include "sheaf/workshop.h"

namespace fretsheaf::command {

// The formats that --as names, each once; nullopt, with a complaint, where one is none.
std::optional<std::vector<sheaf::Format>> read_formats(const std::vector<std::string>& names, Console& console);

}  // namespace fretsheaf::command
