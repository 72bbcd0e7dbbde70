#pragma once

#include <string>

#include "lesson/grid.h"

namespace fretsheaf::lesson {

// A grid with its columns in line: labels as wide as each other, every token and word where its count begins, columns
// wide enough for what stands in them, bar lines under each other, one kind of filler in all string rows (the one that
// most of it is). Lines, their order and their ends stay, and so do bars that are in line. Says the same music, and
// does nothing to its own result. REQUIRES: `grid` was read against that context without errors.
std::string realigned(const std::string& grid, const GridContext& context);

}  // namespace fretsheaf::lesson
