#pragma once

#include <set>

#include "typeface/fonts.h"

namespace fretsheaf::typeface {

// The fake for tests of layout: every code point is a glyph of its own (the glyph's id is the code point) half an em
// wide, its ink a box from the baseline up to 0.7 em as wide as the advance, a space's ink nothing. Capitals are 0.7 em
// high, small letters 0.5 em. Every font has every code point but those in `missing`.
class FixedMetrics final : public Shaper {
 public:
  ShapedText shape(std::string_view text, const TextStyle& style) override;
  std::optional<std::uint32_t> glyph(FontId font, char32_t code_point) override;
  Extents extents(FontId font, std::uint32_t glyph, double size) override;
  double cap_height(FontId font, double size) override;
  double x_height(FontId font, double size) override;

  std::set<char32_t> missing;
};

}  // namespace fretsheaf::typeface
