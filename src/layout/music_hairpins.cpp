#include <algorithm>
#include <optional>

#include "layout/music_draw.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

constexpr double axis = 0.57;     // above the dynamics' baseline, in spaces
constexpr double opening = 1.25;  // in spaces, over all
constexpr double letter_gap = 0.55;

bool before(const lesson::Moment& a, int bar, theory::Rational at) {
  return a.bar != bar ? a.bar < bar : a.at < at;
}

// The part of a hairpin that lies in a line.
struct Part {
  double left = 0;
  double right = 0;
  bool begins = false;
  bool ends = false;
};

const Stop* stop_at(const LinePlan& line, const lesson::Moment& moment) {
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::column && stop.column->bar == moment.bar && stop.column->at == moment.at) return &stop;
  }
  return nullptr;
}

// A letter at either end stands in the same row: the hairpin leaves it room.
double edge(const Context& context, const Stop& stop, int side) {
  const std::optional<Reach>& letters = stop.column->reach(Row::dynamic);
  const double sp = context.space;
  if (side < 0) return letters ? stop.x + letters->right + letter_gap * sp : stop.x - p::head * sp;
  return letters ? stop.x - letters->left - letter_gap * sp : stop.x + p::head * sp;
}

std::optional<Part> part_in(const Context& context, const LinePlan& line, const lesson::Span& span) {
  const Stop* first = nullptr;
  const Stop* last = nullptr;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::column) continue;
    if (first == nullptr) first = &stop;
    last = &stop;
  }
  if (first == nullptr) return {};
  if (before(span.last, first->column->bar, first->column->at)) return {};
  if (!before(span.first, last->column->bar, last->column->at) && stop_at(line, span.first) == nullptr) return {};
  Part part;
  const Stop* begin = stop_at(line, span.first);
  const Stop* end = stop_at(line, span.last);
  part.begins = begin != nullptr;
  part.ends = end != nullptr;
  part.left = begin ? edge(context, *begin, -1) : first->x - p::head * context.space;
  part.right = end ? edge(context, *end, 1) : line.width - 0.5 * context.space;
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
