#pragma once

#include <optional>
#include <string>
#include <vector>

#include "platform/system.h"
#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::sheaf {

// Opens the fonts that each role of a template names; the result is indexed by role. The error names the font that
// cannot be had.
std::optional<std::string> open_fonts(const templates::Template& look, typeface::FontSet& fonts,
                                      std::vector<std::vector<typeface::FontId>>& by_role);

// The first font that a template names by a path out of the folder `root` (empty: the current one), behind a symbolic
// link too.
std::optional<std::string> font_outside(const templates::Template& look, const std::string& root,
                                        const platform::System& system);

}  // namespace fretsheaf::sheaf
