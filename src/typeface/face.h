#pragma once

#include <hb.h>

#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "platform/system.h"
#include "typeface/fonts.h"

struct FT_LibraryRec_;
struct FT_FaceRec_;

namespace fretsheaf::typeface {

struct HbFontDeleter {
  void operator()(hb_font_t* font) const { hb_font_destroy(font); }
};
using HbFont = std::unique_ptr<hb_font_t, HbFontDeleter>;

// One font file. Measures and outlines come from HarfBuzz, unhinted and in font units, so that they scale exactly; the
// FreeType face is for the PDF renderer alone and is not opened before it asks.
class Face {
 public:
  // nullptr where the bytes are no TrueType or OpenType font with characters in it.
  static std::unique_ptr<Face> open(std::string name, platform::SharedBytes bytes);
  ~Face();
  Face(const Face&) = delete;
  Face& operator=(const Face&) = delete;

  const std::string& name() const { return name_; }
  hb_font_t* shaper() const { return font_.get(); }
  double units_per_em() const { return units_per_em_; }

  std::optional<std::uint32_t> glyph(char32_t code_point) const;
  Extents extents(std::uint32_t glyph, double size);
  std::vector<OutlineSegment> outline(std::uint32_t glyph, double size) const;

  // An FT_Face that lives as long as this or any copy of the pointer; nullptr where FreeType refuses the font.
  std::shared_ptr<FT_FaceRec_> native();

 private:
  Face() = default;
  Extents measure(std::uint32_t glyph) const;  // in font units

  std::string name_;
  platform::SharedBytes bytes_;
  HbFont font_;
  double units_per_em_ = 1000;
  std::shared_ptr<FT_FaceRec_> native_;
  std::unordered_map<std::uint32_t, Extents> measured_;  // by glyph, in font units
};

}  // namespace fretsheaf::typeface
