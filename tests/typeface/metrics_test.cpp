#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_BBOX_H
#include FT_TRUETYPE_TABLES_H

#include <catch2/catch.hpp>

#include "real_fonts.h"
#include "typeface/known_fonts.h"

using namespace fretsheaf::typeface;

namespace {

// The reference library: FreeType's own exact box of an unscaled outline, in font units.
struct Reference {
  FT_BBox ink{};
  double advance = 0;
};

Reference reference(FT_Face face, std::uint32_t glyph) {
  REQUIRE(FT_Load_Glyph(face, glyph, FT_LOAD_NO_SCALE | FT_LOAD_IGNORE_TRANSFORM) == 0);
  Reference reference;
  FT_Outline_Get_BBox(&face->glyph->outline, &reference.ink);
  reference.advance = static_cast<double>(face->glyph->metrics.horiAdvance);
  return reference;
}

struct Bounds {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  void add(double x, double y) {
    left = std::min(left, x);
    right = std::max(right, x);
    top = std::min(top, y);
    bottom = std::max(bottom, y);
  }
};

}  // namespace

TEST_CASE("Extents and advances are those of FreeType, to a unit of the font") {
  RealFonts fonts;
  for (const KnownFont& known : known_fonts()) {
    const FontId font = fonts.open(known.name);
    auto* face = static_cast<FT_Face>(fonts.set.native_face(font));
    const double units = face->units_per_EM;
    const char32_t first = known.name == "noto-music" ? 0x1D100 : 0x21;
    const char32_t last = known.name == "noto-music" ? 0x1D126 : 0x17F;
    int compared = 0;
    for (char32_t c = first; c <= last; ++c) {
      const auto glyph = fonts.set.glyph(font, c);
      if (!glyph) continue;
      INFO(known.name << " U+" << std::hex << static_cast<unsigned>(c));
      const Extents extents = fonts.set.extents(font, *glyph, units);
      const Reference expected = reference(face, *glyph);
      CHECK(extents.advance == Approx(expected.advance));
      if (expected.ink.xMax == expected.ink.xMin) continue;
      CHECK(extents.left == Approx(expected.ink.xMin).margin(1));
      CHECK(extents.right == Approx(expected.ink.xMax).margin(1));
      CHECK(extents.top == Approx(-expected.ink.yMax).margin(1));
      CHECK(extents.bottom == Approx(-expected.ink.yMin).margin(1));
      ++compared;
    }
    CHECK(compared > 30);
  }
}

TEST_CASE("An outline is a thousand points to the em and fills its extents") {
  RealFonts fonts;
  for (const auto& [font, c] : {std::pair{fonts.inter, U'R'}, {fonts.charis, U'g'}, {fonts.music, U'\u266D'}}) {
    const std::uint32_t glyph = fonts.set.glyph(font, c).value();
    const Extents extents = fonts.set.extents(font, glyph, 1000);
    Bounds ends;
    Bounds all;
    const auto outline = fonts.set.outline(font, glyph);
    REQUIRE(outline.size() > 8);
    CHECK(outline.front().kind == OutlineSegment::Kind::move);
    CHECK(outline.back().kind == OutlineSegment::Kind::close);
    for (const OutlineSegment& segment : outline) {
      if (segment.kind == OutlineSegment::Kind::close) continue;
      ends.add(segment.x, segment.y);
      all.add(segment.x, segment.y);
      if (segment.kind != OutlineSegment::Kind::curve) continue;
      all.add(segment.x1, segment.y1);
      all.add(segment.x2, segment.y2);
    }
    CHECK(ends.left >= extents.left - 1);
    CHECK(ends.right <= extents.right + 1);
    CHECK(ends.top >= extents.top - 1);
    CHECK(ends.bottom <= extents.bottom + 1);
    CHECK(all.left <= extents.left + 1);
    CHECK(all.right >= extents.right - 1);
    CHECK(all.top <= extents.top + 1);
    CHECK(all.bottom >= extents.bottom - 1);
  }
}

TEST_CASE("A space has no outline and no ink, but an advance") {
  RealFonts fonts;
  const std::uint32_t space = fonts.set.glyph(fonts.charis, U' ').value();
  CHECK(fonts.set.outline(fonts.charis, space).empty());
  const Extents extents = fonts.set.extents(fonts.charis, space, 10);
  CHECK(extents.right - extents.left == 0);
  CHECK(extents.advance > 2);
}

// The OS/2 table of a font says what its designers mean the heights to be (OpenType 1.9, sCapHeight and sxHeight).
TEST_CASE("The measured heights of H and x agree with the fonts' own tables") {
  RealFonts fonts;
  for (const char* name : {"inter-regular", "inter-bold", "charis-regular", "charis-bold"}) {
    const FontId font = fonts.open(name);
    auto* face = static_cast<FT_Face>(fonts.set.native_face(font));
    const auto* os2 = static_cast<const TT_OS2*>(FT_Get_Sfnt_Table(face, FT_SFNT_OS2));
    REQUIRE(os2 != nullptr);
    INFO(name);
    CHECK(fonts.set.cap_height(font, face->units_per_EM) == Approx(os2->sCapHeight).epsilon(0.02));
    CHECK(fonts.set.x_height(font, face->units_per_EM) == Approx(os2->sxHeight).epsilon(0.02));
    CHECK(fonts.set.cap_height(font, 20) == Approx(2 * fonts.set.cap_height(font, 10)));
  }
}
