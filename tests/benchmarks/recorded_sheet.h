#pragma once

#include <string>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::benchmarks {

// The sheet as the drawing calls that a program would make by hand, one a line: fonts by file, then per page its glyph
// runs, rules and paths. What `bare_draw.h` plays.
std::string record(const sheet::Sheet& sheet, const typeface::FontSet& fonts);

}  // namespace fretsheaf::benchmarks
