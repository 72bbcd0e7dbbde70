#include "sheet/sheet.h"

namespace fretsheaf::sheet {
namespace {

struct Mover {
  double dx;
  double dy;

  void move(Point& point) const {
    point.x += dx;
    point.y += dy;
  }

  void operator()(GlyphRun& run) const {
    for (Glyph& glyph : run.glyphs) {
      glyph.x += dx;
      glyph.y += dy;
    }
  }
  void operator()(Rule& rule) const {
    move(rule.from);
    move(rule.to);
  }
  void operator()(Path& path) const {
    for (Segment& segment : path.segments) {
      move(segment.end);
      move(segment.control1);
      move(segment.control2);
    }
  }
  void move(Box& area) const {
    area.left += dx;
    area.right += dx;
    area.top += dy;
    area.bottom += dy;
  }
  void operator()(Link& link) const { move(link.area); }
  void operator()(Image& image) const { move(image.area); }
  void operator()(Group& group) const {
    if (group.event) group.event->x += dx;
    translate(group.items, dx, dy);
  }
};

}  // namespace

const char* part_name(Part part) {
  switch (part) {
#define FRETSHEAF_PART(name) \
  case Part::name:           \
    return #name;
#include "sheet/parts.def"
#undef FRETSHEAF_PART
  }
  return "";
}

void translate(Item& item, double dx, double dy) {
  std::visit(Mover{dx, dy}, item);
}

void translate(std::vector<Item>& items, double dx, double dy) {
  for (Item& item : items) translate(item, dx, dy);
}

}  // namespace fretsheaf::sheet
