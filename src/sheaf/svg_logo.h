#pragma once

#include <optional>
#include <string>

namespace fretsheaf::sheaf {

// Why an SVG may not be a logo: what follows "this logo …"; nullopt where nothing speaks against it. Text would be set
// in whatever fonts a machine has, and scripts and outside parts have no place in a page that is to look the same for
// ever.
std::optional<std::string> svg_problem(const std::string& bytes);

}  // namespace fretsheaf::sheaf
