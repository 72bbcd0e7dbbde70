#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// The outlines of glyphs as path data, each worked out once for all pages.
class SvgGlyphs {
 public:
  using Key = std::pair<typeface::FontId, std::uint32_t>;

  explicit SvgGlyphs(typeface::FontSet& fonts) : fonts_(fonts) {}

  // At 1000 units to the em, y downward; empty where the glyph draws nothing.
  const std::string& outline(Key glyph);

  // "inter-semibold-45": of the font's name, so that pages of several sheets can stand in one document.
  std::string id(Key glyph) const;

  // The glyphs that a page draws, each once, in order.
  std::vector<Key> used_on(const sheet::Page& page);

 private:
  typeface::FontSet& fonts_;
  std::map<Key, std::string> outlines_;
};

}  // namespace fretsheaf::render
