#include "sample.h"

namespace fretsheaf::render {

std::vector<sheet::Item> Sample::text(std::string_view text, std::vector<typeface::FontId> list, double x, double y,
                                      double size, double tracking) {
  std::vector<sheet::Item> items;
  for (const typeface::ShapedRun& shaped : fonts.shape(text, {list, size, tracking, false}).runs) {
    sheet::GlyphRun run{sheet::Part::text, shaped.font, size, {}, {}, shaped.text, {}};
    for (const typeface::ShapedGlyph& glyph : shaped.glyphs) run.glyphs.push_back({glyph.id, x + glyph.x, y + glyph.y});
    for (const typeface::ShapedCluster& cluster : shaped.clusters) {
      run.clusters.push_back({cluster.bytes, cluster.glyphs});
    }
    items.emplace_back(std::move(run));
  }
  return items;
}

sheet::Sheet a4(std::vector<sheet::Item> items) {
  sheet::Sheet sheet;
  sheet.title = "Low tide vamp";
  sheet.author = "Eelgrass Strings";
  sheet.language = "en";
  sheet.pages.push_back({595.2756, 841.8898, std::move(items)});
  return sheet;
}

}  // namespace fretsheaf::render
