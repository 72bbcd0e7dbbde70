#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"

namespace fretsheaf::benchmarks {

// The sheet as the drawing calls that a program would make by hand, one a line: fonts by file, then per page its glyph
// runs, rules and paths. What `bare_draw.h` plays. `font_paths` by the sheet's font index.
std::string record(const sheet::Sheet& sheet, const std::vector<std::string>& font_paths);

}  // namespace fretsheaf::benchmarks
