#include "render/svg_glyphs.h"

#include <set>

#include "render/svg_path.h"
#include "sheet/walk.h"

namespace fretsheaf::render {

const SvgGlyphs::Definition& SvgGlyphs::definition(Key glyph) {
  const auto found = definitions_.find(glyph);
  if (found != definitions_.end()) return found->second;
  return definitions_.emplace(glyph, Definition{id(glyph), outline(glyph)}).first->second;
}

std::string SvgGlyphs::outline(Key glyph) {
  SvgPath path(1);
  for (const typeface::OutlineSegment& segment : fonts_.outline(glyph.first, glyph.second)) {
    using Kind = typeface::OutlineSegment::Kind;
    switch (segment.kind) {
      case Kind::move:
        path.draw('M', {segment.x, segment.y});
        break;
      case Kind::line:
        path.draw('L', {segment.x, segment.y});
        break;
      case Kind::curve:
        path.draw('C', {segment.x1, segment.y1, segment.x2, segment.y2, segment.x, segment.y});
        break;
      case Kind::close:
        path.draw('Z', {});
        break;
    }
  }
  return path.data();
}

std::string SvgGlyphs::id(Key glyph) const {
  std::string id;
  for (const char c : fonts_.name(glyph.first)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    id += plain ? c : '-';
  }
  // A name of other characters alone could be that of another font.
  if (id != fonts_.name(glyph.first)) id += "-f" + std::to_string(glyph.first);
  return id + "-" + std::to_string(glyph.second);
}

std::vector<const SvgGlyphs::Definition*> SvgGlyphs::used_on(const sheet::Page& page) {
  std::set<Key> used;
  sheet::walk(page, [&](const sheet::Item& item, sheet::GroupChain) {
    const auto* run = std::get_if<sheet::GlyphRun>(&item);
    if (run == nullptr) return;
    for (const sheet::Glyph& glyph : run->glyphs) used.insert({run->font, glyph.id});
  });
  std::vector<const Definition*> definitions;
  for (const Key& glyph : used) {
    if (!definition(glyph).outline.empty()) definitions.push_back(&definition(glyph));
  }
  return definitions;
}

}  // namespace fretsheaf::render
