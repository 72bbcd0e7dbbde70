#include <algorithm>
#include <optional>
#include <vector>

#include "layout/music_draw.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

constexpr double axis = 0.57;     // above the dynamics' baseline, in spaces
constexpr double opening = 1.25;  // in spaces, over all
constexpr double letter_gap = 0.55;
constexpr double before_bar_line = 0.5;

// A piece of a hairpin: what lies in a line, without the dynamics that stand in the middle of it. `begin` and `end` say
// how far along the whole it is, for its opening.
struct Piece {
  double left = 0;
  double right = 0;
  double begin = 0;
  double end = 1;
};

bool is_hairpin(const lesson::Span& span) {
  return span.kind == lesson::SpanKind::crescendo || span.kind == lesson::SpanKind::diminuendo;
}

// Whether another hairpin begins where this one ends, or the other way round: the two keep apart there.
bool meets_another(const Context& context, const lesson::Span& span, bool at_end) {
  return std::any_of(context.example.spans.begin(), context.example.spans.end(), [&](const lesson::Span& other) {
    const lesson::Moment& here = at_end ? span.last : span.first;
    const lesson::Moment& there = at_end ? other.first : other.last;
    return &other != &span && is_hairpin(other) && here.bar == there.bar && here.at == there.at;
  });
}

// A letter at either end stands in the same row: the hairpin leaves it room. So it does to a bar line at its end.
double edge(const Context& context, const Stop& stop, bool at_end, bool meets) {
  const double sp = context.space;
  if (stop.kind == StopKind::bar_line) {
    return stop.x - bar_line_width(context, stop.sign) - before_bar_line * sp;
  }
  const std::optional<Reach>& letters = stop.column->reach(Row::dynamic);
  if (letters) return at_end ? stop.x - letters->left - letter_gap * sp : stop.x + letters->right + letter_gap * sp;
  const double beyond = meets ? -0.3 * sp : p::head * sp;
  return at_end ? stop.x + beyond : stop.x - beyond;
}

std::vector<Piece> pieces_in(const Context& context, const LinePlan& line, const lesson::Span& span) {
  const std::optional<SpanPart> part = part_of_span(line, span);
  if (!part) return {};
  const double sp = context.space;
  // What goes on over a line break is half open there.
  Piece whole{part->first->x - p::head * sp, line.width - before_bar_line * sp, part->begin ? 0 : 0.5,
              part->end ? 1 : 0.6};
  if (part->begin) whole.left = edge(context, *part->begin, false, meets_another(context, span, false));
  if (part->end) whole.right = edge(context, *part->end, true, meets_another(context, span, true));
  const auto along = [&](double x) {
    return whole.begin + (whole.end - whole.begin) * (x - whole.left) / (whole.right - whole.left);
  };
  std::vector<Piece> pieces;
  Piece piece = whole;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::column || !stop.column->reach(Row::dynamic)) continue;
    const double right = edge(context, stop, true, false);
    const double left = edge(context, stop, false, false);
    if (left <= whole.left || right >= whole.right) continue;
    piece.right = right;
    piece.end = along(right);
    pieces.push_back(piece);
    piece = {left, whole.right, along(left), whole.end};
  }
  pieces.push_back(piece);
  return pieces;
}

void draw(Layer& layer, const Context& context, const Piece& piece, bool opens) {
  const double sp = context.space;
  const double half = opening / 2 * sp;
  const double y = -axis * sp;
  const double left = half * (opens ? piece.begin : 1 - piece.begin);
  const double right = half * (opens ? piece.end : 1 - piece.end);
  // One stroke from its open end to the other side of that.
  std::vector<sheet::Point> points{
      {piece.left, y - left}, {piece.right, y - right}, {piece.right, y + right}, {piece.left, y + left}};
  sheet::Path path = stroked(sheet::Part::hairpin, {points[0], points[1]}, p::bracket * sp);
  const auto add = [&](sheet::Segment::Kind kind, sheet::Point point) {
    path.segments.push_back({kind, point, {}, {}});
  };
  if (opens && left == 0) {
    path = stroked(sheet::Part::hairpin, {points[1], {piece.left, y}, points[2]}, p::bracket * sp);
  } else if (!opens && right == 0) {
    path = stroked(sheet::Part::hairpin, {points[0], {piece.right, y}, points[3]}, p::bracket * sp);
  } else {
    add(sheet::Segment::Kind::move, points[3]);
    add(sheet::Segment::Kind::line, points[2]);
  }
  layer.path(path, bounds(path));
}

}  // namespace

Layer hairpins(const Context& context, const LinePlan& line) {
  Layer layer;
  for (const lesson::Span& span : context.example.spans) {
    if (!is_hairpin(span)) continue;
    for (const Piece& piece : pieces_in(context, line, span)) {
      if (piece.right - piece.left < context.space) continue;
      draw(layer, context, piece, span.kind == lesson::SpanKind::crescendo);
    }
  }
  return layer;
}

}  // namespace fretsheaf::layout
