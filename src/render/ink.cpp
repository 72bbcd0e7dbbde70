#include "render/ink.h"

#include <algorithm>
#include <cmath>

#include "typeface/bounds.h"

namespace fretsheaf::render {
namespace {

using sheet::Box;
using MaybeBox = std::optional<Box>;

void join(MaybeBox& whole, const MaybeBox& part) {
  if (!part) return;
  if (!whole) {
    whole = part;
    return;
  }
  whole->left = std::min(whole->left, part->left);
  whole->top = std::min(whole->top, part->top);
  whole->right = std::max(whole->right, part->right);
  whole->bottom = std::max(whole->bottom, part->bottom);
}

class Ink {
 public:
  explicit Ink(typeface::Shaper& shaper) : shaper_(shaper) {}

  MaybeBox operator()(const sheet::GlyphRun& run) const {
    MaybeBox whole;
    for (const sheet::Glyph& glyph : run.glyphs) {
      const typeface::Extents ink = shaper_.extents(run.font, glyph.id, run.size);
      if (ink.right <= ink.left && ink.bottom <= ink.top) continue;
      join(whole, Box{glyph.x + ink.left, glyph.y + ink.top, glyph.x + ink.right, glyph.y + ink.bottom});
    }
    return whole;
  }

  MaybeBox operator()(const sheet::Rule& rule) const {
    const double dx = rule.to.x - rule.from.x;
    const double dy = rule.to.y - rule.from.y;
    const double length = std::hypot(dx, dy);
    if (length == 0 || rule.width == 0) return std::nullopt;
    // Butt ends: the line grows only across itself.
    const double across_x = std::abs(dy) / length * rule.width / 2;
    const double across_y = std::abs(dx) / length * rule.width / 2;
    return Box{std::min(rule.from.x, rule.to.x) - across_x, std::min(rule.from.y, rule.to.y) - across_y,
               std::max(rule.from.x, rule.to.x) + across_x, std::max(rule.from.y, rule.to.y) + across_y};
  }

  MaybeBox operator()(const sheet::Path& path) const {
    if (!path.fill && !path.stroke) return std::nullopt;
    typeface::Bounds bounds;
    for (const sheet::Segment& segment : path.segments) trace(bounds, segment);
    if (!bounds.box()) return std::nullopt;
    const double grown = path.stroke ? path.stroke_width / 2 : 0;
    const auto& box = *bounds.box();
    return Box{box.left - grown, box.top - grown, box.right + grown, box.bottom + grown};
  }

  MaybeBox operator()(const sheet::Link&) const { return std::nullopt; }
  MaybeBox operator()(const sheet::Image& image) const { return image.area; }

  MaybeBox operator()(const sheet::Group& group) const {
    MaybeBox whole;
    for (const sheet::Item& item : group.items) join(whole, std::visit(*this, item));
    return whole;
  }

 private:
  static void trace(typeface::Bounds& bounds, const sheet::Segment& segment) {
    switch (segment.kind) {
      case sheet::Segment::Kind::move:
        return bounds.move_to(segment.end.x, segment.end.y);
      case sheet::Segment::Kind::line:
        return bounds.line_to(segment.end.x, segment.end.y);
      case sheet::Segment::Kind::curve:
        return bounds.curve_to(segment.control1.x, segment.control1.y, segment.control2.x, segment.control2.y,
                               segment.end.x, segment.end.y);
      case sheet::Segment::Kind::close:
        return;
    }
  }

  typeface::Shaper& shaper_;
};

}  // namespace

std::optional<Box> ink_box(const sheet::Item& item, typeface::Shaper& shaper) {
  return std::visit(Ink(shaper), item);
}

std::optional<Box> ink_box(const sheet::Group& group, typeface::Shaper& shaper) {
  return Ink(shaper)(group);
}

}  // namespace fretsheaf::render
