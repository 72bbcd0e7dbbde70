#include <algorithm>
#include <optional>

#include "layout/music_draw.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

constexpr double axis = 0.57;     // above the dynamics' baseline, in spaces
constexpr double opening = 1.25;  // in spaces, over all
constexpr double letter_gap = 0.55;

// The part of a hairpin that lies in a line.
struct Part {
  double left = 0;
  double right = 0;
  bool begins = false;
  bool ends = false;
};

// A letter at either end stands in the same row: the hairpin leaves it room.
double edge(const Context& context, const Stop& stop, int side) {
  const std::optional<Reach>& letters = stop.column->reach(Row::dynamic);
  const double sp = context.space;
  if (side < 0) return letters ? stop.x + letters->right + letter_gap * sp : stop.x - p::head * sp;
  return letters ? stop.x - letters->left - letter_gap * sp : stop.x + p::head * sp;
}

std::optional<Part> part_in(const Context& context, const LinePlan& line, const lesson::Span& span) {
  const std::optional<SpanPart> stops = part_of_span(line, span);
  if (!stops) return {};
  Part part;
  part.begins = stops->begin != nullptr;
  part.ends = stops->end != nullptr;
  part.left = stops->begin ? edge(context, *stops->begin, -1) : stops->first->x - p::head * context.space;
  part.right = stops->end ? edge(context, *stops->end, 1) : line.width - 0.5 * context.space;
  return part;
}

}  // namespace

Layer hairpins(const Context& context, const LinePlan& line) {
  Layer layer;
  const double sp = context.space;
  for (const lesson::Span& span : context.example.spans) {
    const bool opens = span.kind == lesson::SpanKind::crescendo;
    if (!opens && span.kind != lesson::SpanKind::diminuendo) continue;
    const std::optional<Part> part = part_in(context, line, span);
    if (!part || part->right - part->left < sp) continue;
    // What goes on over a line break is half open there.
    double left = part->begins ? 0 : 0.5;
    double right = part->ends ? 1 : 0.6;
    if (!opens) {
      left = part->begins ? 1 : 0.5;
      right = part->ends ? 0 : 0.4;
    }
    const double half = opening / 2 * sp;
    for (const int side : {-1, 1}) {
      const sheet::Path stroke =
          stroked(sheet::Part::hairpin,
                  {{part->left, -axis * sp + side * half * left}, {part->right, -axis * sp + side * half * right}},
                  p::bracket * sp);
      layer.path(stroke, bounds(stroke));
    }
  }
  return layer;
}

}  // namespace fretsheaf::layout
