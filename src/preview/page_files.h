#pragma once

#include <optional>
#include <string_view>

#include "preview/request.h"

namespace fretsheaf::preview {

// A file of the page itself ("preview.css"; "" is the page), which were built in; nullopt where there is no such.
std::optional<Response> page_file(std::string_view name);

}  // namespace fretsheaf::preview
