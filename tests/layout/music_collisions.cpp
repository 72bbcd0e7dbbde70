#include "layout/music_collisions.h"

#include <algorithm>
#include <sstream>

#include "sheet/walk.h"

namespace fretsheaf::test {

using sheet::Box;
using sheet::Part;

namespace {

enum class Where {
  anywhere,
  one_event,  // only within one event's group
  lines       // only lines: words of either part keep apart
};

struct Pair {
  Part a;
  Part b;
  Where where = Where::anywhere;
};

// What may lie on each other: the one table. Anything else on a page must keep apart.
constexpr Pair touching[] = {
    // Signs on a staff line, and lines that end at a bar line.
    {Part::staff_line, Part::slash_head},
    {Part::staff_line, Part::stem},
    {Part::staff_line, Part::rest},
    {Part::staff_line, Part::clef},
    {Part::staff_line, Part::time_signature},
    {Part::staff_line, Part::bar_line},
    {Part::staff_line, Part::flag},
    // The notes staff: what stands on its lines or crosses them, and what is one note.
    {Part::staff_line, Part::note_head},
    {Part::staff_line, Part::accidental},
    {Part::staff_line, Part::key_signature},
    {Part::staff_line, Part::beam},
    {Part::staff_line, Part::tie},
    {Part::staff_line, Part::slur},
    {Part::staff_line, Part::slide},
    {Part::staff_line, Part::articulation},
    {Part::note_head, Part::note_head, Where::one_event},
    {Part::note_head, Part::stem, Where::one_event},
    {Part::note_head, Part::ledger_line, Where::one_event},
    {Part::ledger_line, Part::stem, Where::one_event},
    {Part::ledger_line, Part::ledger_line, Where::one_event},
    {Part::ledger_line, Part::articulation, Where::one_event},  // tremolo strokes
    {Part::key_signature, Part::key_signature},
    {Part::tab_line, Part::bar_line},
    {Part::tab_line, Part::slur},
    {Part::tab_line, Part::slide},
    {Part::tab_line, Part::bend},
    // A tab that carries the rhythm has rests and the time signature on its lines.
    {Part::tab_line, Part::rest},
    {Part::tab_line, Part::time_signature},
    // What goes on over a bar line.
    {Part::bar_line, Part::hairpin},
    {Part::bar_line, Part::technique, Where::lines},
    {Part::bar_line, Part::slur},
    {Part::bar_line, Part::slide},
    {Part::bar_line, Part::tie},
    // The hook at the end of a dashed line.
    {Part::technique, Part::technique, Where::lines},
    // Heads, stems, flags and beams are one note; the parts of a head are one sign.
    {Part::slash_head, Part::slash_head, Where::one_event},
    {Part::slash_head, Part::stem, Where::one_event},
    {Part::slash_head, Part::flag, Where::one_event},
    {Part::stem, Part::flag, Where::one_event},
    {Part::flag, Part::flag, Where::one_event},
    // The notes of a tempo mark are one sign.
    {Part::tempo_mark, Part::tempo_mark},
    {Part::stem, Part::stem, Where::one_event},
    {Part::stem, Part::beam},
    {Part::stem, Part::articulation, Where::one_event},  // tremolo strokes
    {Part::bend, Part::bend, Where::one_event},
    {Part::rule, Part::rule},
    {Part::rule, Part::text},  // the line under a link crosses descenders
    {Part::ladder, Part::ladder},
    // Strings, wires and inlays; marks lie on them, and in the marks their labels. No mark lies on another.
    {Part::neck, Part::neck},
    {Part::neck, Part::neck_mark},
    {Part::neck, Part::neck_label},
    {Part::neck_mark, Part::neck_label},
    {Part::neck_label, Part::neck_label},
    {Part::chord_box, Part::chord_box},
    {Part::form_chart, Part::form_chart},
    // Words stand on a shade, and never on a line.
    {Part::form_shade, Part::form_shade},
    {Part::form_shade, Part::form_chart},
    {Part::form_shade, Part::chord_symbol},
    {Part::form_shade, Part::repeat_dot},
    {Part::form_shade, Part::text},
};

constexpr double tolerance = 0.12;  // points that boxes may share: hinted outlines round

bool may_touch(const InkBox& a, const InkBox& b) {
  return std::any_of(std::begin(touching), std::end(touching), [&](const Pair& pair) {
    const bool named = (pair.a == a.part && pair.b == b.part) || (pair.a == b.part && pair.b == a.part);
    if (!named) return false;
    if (pair.where == Where::lines) return a.text.empty() && b.text.empty();
    return pair.where == Where::anywhere || (a.event != nullptr && a.event == b.event);
  });
}

// Letters of neighbouring words may lean over each other by a hair; their words are set side by side on one line.
bool prose(Part part) {
  return part == Part::text || part == Part::heading || part == Part::footer || part == Part::tempo_mark ||
         part == Part::chord_symbol;
}

class Boxes {
 public:
  explicit Boxes(typeface::Shaper& shaper) : shaper_(shaper) {}

  void visit(const sheet::Item& item, sheet::GroupChain chain) {
    event_ = nullptr;
    for (const sheet::Group* group : chain) {
      if (group->event) event_ = group;
    }
    ++item_;
    if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) glyphs(*run);
    if (const auto* rule = std::get_if<sheet::Rule>(&item)) line(*rule);
    if (const auto* path = std::get_if<sheet::Path>(&item)) shape(*path);
  }
  std::vector<InkBox> take() { return std::move(boxes_); }

 private:
  void add(Part part, Box box, std::string text = {}) { boxes_.push_back({part, box, item_, event_, std::move(text)}); }

  void glyphs(const sheet::GlyphRun& run) {
    for (const sheet::Glyph& glyph : run.glyphs) {
      const typeface::Extents e = shaper_.extents(run.font, glyph.id, run.size);
      if (e.right <= e.left || e.bottom <= e.top) continue;
      add(run.part, {glyph.x + e.left, glyph.y + e.top, glyph.x + e.right, glyph.y + e.bottom}, run.text);
    }
  }

  void line(const sheet::Rule& rule) { piece(rule.part, rule.from, rule.to, rule.width / 2); }

  void piece(Part part, sheet::Point from, sheet::Point to, double half) {
    const double dx = from.y == to.y ? 0 : half;
    const double dy = from.x == to.x ? 0 : half;
    add(part, {std::min(from.x, to.x) - dx, std::min(from.y, to.y) - dy, std::max(from.x, to.x) + dx,
               std::max(from.y, to.y) + dy});
  }

  void shape(const sheet::Path& path) {
    const bool thin = path.stroke.has_value() || path.part == Part::tie || path.part == Part::slur;
    const double half = path.stroke ? path.stroke_width / 2 : 0;
    if (path.part == Part::beam) return slanted(path);
    std::optional<Box> whole;
    sheet::Point begin;
    sheet::Point last;
    const auto to = [&](sheet::Point point) {
      if (thin) {
        piece(path.part, last, point, half);
      } else {
        const Box box{std::min(last.x, point.x), std::min(last.y, point.y), std::max(last.x, point.x),
                      std::max(last.y, point.y)};
        whole = whole ? Box{std::min(whole->left, box.left), std::min(whole->top, box.top),
                            std::max(whole->right, box.right), std::max(whole->bottom, box.bottom)}
                      : box;
      }
      last = point;
    };
    for (const sheet::Segment& s : path.segments) {
      if (s.kind == sheet::Segment::Kind::move) {
        begin = last = s.end;
      } else if (s.kind == sheet::Segment::Kind::close) {
        to(begin);
      } else if (s.kind == sheet::Segment::Kind::line) {
        slanted(last, s.end, to);
      } else {
        curve(last, s, to);
      }
    }
    if (whole) add(path.part, *whole);
  }

  // A slanted line is not the box around it.
  template <typename To>
  static void slanted(sheet::Point from, sheet::Point end, To to) {
    constexpr int pieces = 12;
    const int count = from.x == end.x || from.y == end.y ? 1 : pieces;
    for (int i = 1; i <= count; ++i) {
      const double t = static_cast<double>(i) / count;
      to({from.x + t * (end.x - from.x), from.y + t * (end.y - from.y)});
    }
  }

  // A beam's box is not all ink where it is slanted: it is taken in slices. Its corners go around from the top left.
  void slanted(const sheet::Path& path) {
    const sheet::Point a = path.segments.at(0).end;
    const sheet::Point b = path.segments.at(1).end;
    const double thick = path.segments.at(3).end.y - a.y;
    constexpr int slices = 24;
    for (int i = 0; i < slices; ++i) {
      const double t = static_cast<double>(i) / slices;
      const double u = static_cast<double>(i + 1) / slices;
      const double y1 = a.y + t * (b.y - a.y);
      const double y2 = a.y + u * (b.y - a.y);
      add(path.part, {a.x + t * (b.x - a.x), std::min({y1, y2, y1 + thick, y2 + thick}), a.x + u * (b.x - a.x),
                      std::max({y1, y2, y1 + thick, y2 + thick})});
    }
  }

  template <typename To>
  static void curve(sheet::Point from, const sheet::Segment& s, To to) {
    constexpr int pieces = 12;
    for (int i = 1; i <= pieces; ++i) {
      const double t = static_cast<double>(i) / pieces;
      const double u = 1 - t;
      to({u * u * u * from.x + 3 * u * u * t * s.control1.x + 3 * u * t * t * s.control2.x + t * t * t * s.end.x,
          u * u * u * from.y + 3 * u * u * t * s.control1.y + 3 * u * t * t * s.control2.y + t * t * t * s.end.y});
    }
  }

  typeface::Shaper& shaper_;
  std::vector<InkBox> boxes_;
  int item_ = 0;
  const sheet::Group* event_ = nullptr;
};

bool overlap(const Box& a, const Box& b) {
  return a.left < b.right - tolerance && b.left < a.right - tolerance && a.top < b.bottom - tolerance &&
         b.top < a.bottom - tolerance;
}

}  // namespace

std::vector<InkBox> ink_boxes(const sheet::Page& page, typeface::Shaper& shaper) {
  Boxes boxes(shaper);
  sheet::walk(page, [&](const sheet::Item& item, sheet::GroupChain chain) { boxes.visit(item, chain); });
  return boxes.take();
}

std::string describe(const InkBox& ink) {
  std::ostringstream out;
  out << sheet::part_name(ink.part);
  if (!ink.text.empty()) out << " '" << ink.text << "'";
  out << " (" << ink.box.left << ", " << ink.box.top << ", " << ink.box.right << ", " << ink.box.bottom << ")";
  return out.str();
}

std::string describe(const Collision& collision) {
  return describe(collision.a) + " on " + describe(collision.b);
}

std::vector<Collision> collisions(const sheet::Page& page, typeface::Shaper& shaper) {
  std::vector<InkBox> boxes = ink_boxes(page, shaper);
  std::stable_sort(boxes.begin(), boxes.end(),
                   [](const InkBox& a, const InkBox& b) { return a.box.left < b.box.left; });
  std::vector<Collision> found;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for (std::size_t j = i + 1; j < boxes.size() && boxes[j].box.left < boxes[i].box.right; ++j) {
      const InkBox& a = boxes[i];
      const InkBox& b = boxes[j];
      if (a.item == b.item || !overlap(a.box, b.box) || may_touch(a, b)) continue;
      if (prose(a.part) && a.part == b.part && a.box.right - b.box.left < 0.8) continue;
      found.push_back({a, b});
    }
  }
  return found;
}

std::vector<InkBox> outside(const sheet::Page& page, typeface::Shaper& shaper, Box text, double hanging) {
  std::vector<InkBox> found;
  for (InkBox& ink : ink_boxes(page, shaper)) {
    const double left = text.left - (ink.part == Part::string_letter ? hanging : 0);
    // A slanted or serifed letter at a line's end overhangs its own origin by a hair.
    const double overhang = prose(ink.part) ? 0.5 : tolerance;
    const bool inside = ink.box.left >= left - overhang && ink.box.right <= text.right + overhang &&
                        ink.box.top >= text.top - tolerance && ink.box.bottom <= text.bottom + tolerance;
    if (!inside) found.push_back(std::move(ink));
  }
  return found;
}

}  // namespace fretsheaf::test
