#pragma once

#include <optional>
#include <string>
#include <vector>

#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::sheaf {

// Opens the fonts that each role of a template names; the result is indexed by role. The error names the font that
// cannot be had.
std::optional<std::string> open_fonts(const templates::Template& look, typeface::FontSet& fonts,
                                      std::vector<std::vector<typeface::FontId>>& by_role);

}  // namespace fretsheaf::sheaf
