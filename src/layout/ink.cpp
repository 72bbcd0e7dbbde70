#include "layout/ink.h"

#include <algorithm>

namespace fretsheaf::layout {
namespace {

using sheet::Box;

// Grows with what it takes in.
struct Hull {
  std::optional<Box> box;

  void add(const Box& b) {
    box = box ? Box{std::min(box->left, b.left), std::min(box->top, b.top), std::max(box->right, b.right),
                    std::max(box->bottom, b.bottom)}
              : b;
  }
};

void add_run(Hull& hull, const sheet::GlyphRun& run, Type& type) {
  for (const sheet::Glyph& glyph : run.glyphs) {
    const typeface::Extents e = type.glyph_ink(run.font, glyph.id, run.size);
    if (e.right <= e.left || e.bottom <= e.top) continue;
    hull.add({glyph.x + e.left, glyph.y + e.top, glyph.x + e.right, glyph.y + e.bottom});
  }
}

void add_rule(Hull& hull, const sheet::Rule& rule) {
  const bool upright = rule.from.x == rule.to.x;
  const bool level = rule.from.y == rule.to.y;
  const double dx = level ? 0 : rule.width / 2;
  const double dy = upright ? 0 : rule.width / 2;
  hull.add({std::min(rule.from.x, rule.to.x) - dx, std::min(rule.from.y, rule.to.y) - dy,
            std::max(rule.from.x, rule.to.x) + dx, std::max(rule.from.y, rule.to.y) + dy});
}

void add_path(Hull& hull, const sheet::Path& path) {
  const double out = path.stroke ? path.stroke_width / 2 : 0;
  const auto point = [&](sheet::Point p) { hull.add({p.x - out, p.y - out, p.x + out, p.y + out}); };
  for (const sheet::Segment& segment : path.segments) {
    if (segment.kind == sheet::Segment::Kind::close) continue;
    point(segment.end);
    if (segment.kind != sheet::Segment::Kind::curve) continue;
    point(segment.control1);
    point(segment.control2);
  }
}

void add_items(Hull& hull, std::span<const sheet::Item> items, Type& type) {
  for (const sheet::Item& item : items) {
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) add_run(hull, *run, type);
    if (const auto* rule = std::get_if<sheet::Rule>(&item)) add_rule(hull, *rule);
    if (const auto* path = std::get_if<sheet::Path>(&item)) add_path(hull, *path);
    if (const auto* image = std::get_if<sheet::Image>(&item)) hull.add(image->area);
    if (const auto* group = std::get_if<sheet::Group>(&item)) add_items(hull, group->items, type);
  }
}

}  // namespace

std::optional<Box> ink_of(std::span<const sheet::Item> items, Type& type) {
  Hull hull;
  add_items(hull, items, type);
  return hull.box;
}

}  // namespace fretsheaf::layout
