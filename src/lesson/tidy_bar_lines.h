#pragma once

#include <optional>
#include <string>

namespace fretsheaf::lesson {

// Which end of a bar a row is held to where its bar is not as wide as the count row's.
enum class Side { left, right };

// A grid whose rows are cut at their own bar lines and put together again with these under each other. nullopt where
// that would be a guess: a row with more bar lines than the count row, or with a repeat that the count row lacks.
std::optional<std::string> with_bar_lines_aligned(const std::string& grid, Side side);

// A grid with its tab characters as so many blanks that a tab stop every `width` columns asks for.
std::string with_tabs_expanded(const std::string& grid, int width);

}  // namespace fretsheaf::lesson
