#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::render {

// The glyphs of a sheet as SVG knows them, each worked out once for all pages.
class SvgGlyphs {
 public:
  using Key = std::pair<typeface::FontId, std::uint32_t>;

  struct Definition {
    std::string id;       // "inter-semibold-45": of the font's name, so that several sheets can stand in one document
    std::string outline;  // path data at 1000 units to the em, y downward; empty where the glyph draws nothing
  };

  explicit SvgGlyphs(typeface::FontSet& fonts) : fonts_(fonts) {}

  // Valid as long as this.
  const Definition& definition(Key glyph);

  // What a page draws, each glyph once, in order.
  std::vector<const Definition*> used_on(const sheet::Page& page);

 private:
  std::string outline(Key glyph);
  std::string id(Key glyph) const;

  typeface::FontSet& fonts_;
  std::map<Key, Definition> definitions_;
};

}  // namespace fretsheaf::render
