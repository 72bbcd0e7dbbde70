#pragma once

#include <span>
#include <string_view>

#include "typeface/fonts.h"

namespace fretsheaf::typeface {

// The signs of `fonts/outlines.toml`, which no packaged font has. What each is and where its origin lies is said there.
enum class OwnSign {
  slash_filled,
  slash_open,
  dead,
  diamond,
  parenthesis_left,
  parenthesis_right,
  digit_parenthesis_left,
  digit_parenthesis_right,
  rhythm_clef,
  stroke_down
};

// The sign's outline in staff spaces (digit parentheses: in spaces between tab lines), y DOWNWARD as on the page, to be
// filled with the non-zero rule. Valid as long as the program runs.
std::span<const OutlineSegment> own_outline(OwnSign sign);

}  // namespace fretsheaf::typeface
