#include "typeface/fixed_metrics.h"

#include <hb.h>

#include <algorithm>

#include "typeface/itemize.h"

namespace fretsheaf::typeface {
namespace {

constexpr double advance_in_ems = 0.5;
constexpr double cap_height_in_ems = 0.7;
constexpr double x_height_in_ems = 0.5;

}  // namespace

ShapedText FixedMetrics::shape(std::string_view text, const TextStyle& style) {
  Itemized itemized = itemize(text, std::min<std::size_t>(style.fonts.size(), 1),
                              [this](std::size_t, char32_t c) { return !missing.contains(c); });
  ShapedText shaped;
  shaped.missing = std::move(itemized.missing);
  for (const TextRun& run : itemized.runs) {
    ShapedRun& into = shaped.runs.emplace_back(ShapedRun{style.fonts.front(), run.text, {}, {}});
    for (const Character& character : decode(run.text)) {
      const Extents glyph = extents(into.font, character.code_point, style.size);
      if (glyph.right > 0) {
        if (shaped.ink.right == 0) shaped.ink.left = shaped.advance;
        shaped.ink.top = glyph.top;
        shaped.ink.right = shaped.advance + glyph.right;
      }
      into.glyphs.push_back({character.code_point, shaped.advance, 0});
      into.clusters.push_back({static_cast<std::uint16_t>(character.bytes.size()), 1});
      shaped.advance += glyph.advance + style.tracking;
    }
  }
  shaped.ink.advance = shaped.advance;
  return shaped;
}

std::optional<std::uint32_t> FixedMetrics::glyph(FontId, char32_t code_point) {
  if (missing.contains(code_point)) return std::nullopt;
  return code_point;
}

Extents FixedMetrics::extents(FontId, std::uint32_t glyph, double size) {
  const double advance = advance_in_ems * size;
  if (glyph == U' ') return {0, 0, 0, 0, advance};
  return {0, -cap_height_in_ems * size, advance, 0, advance};
}

double FixedMetrics::cap_height(FontId, double size) {
  return cap_height_in_ems * size;
}

double FixedMetrics::x_height(FontId, double size) {
  return x_height_in_ems * size;
}

}  // namespace fretsheaf::typeface
