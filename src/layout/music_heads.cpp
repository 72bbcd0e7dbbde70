#include <algorithm>
#include <cmath>

#include "layout/music_signs.h"

namespace fretsheaf::layout {

using score::HeadKind;
using sheet::Part;
using sheet::Path;
using sheet::Point;
namespace p = proportion;

namespace {

// Stems are 3.5 spaces from the head's centre, longer where more than one beam or flag must fit; one length for a whole
// example, so that its beams lie level.
double stem_length(const Context& context) {
  if (context.most_beams < 2) return 3.5;
  return 3.75 + 0.75 * (context.most_beams - 2);
}

std::vector<Point> scaled(std::vector<Point> corners, double factor) {
  for (Point& corner : corners) corner = {corner.x * factor, corner.y * factor};
  return corners;
}

// Corners in spaces, y downward (engraving.md, "Heads, stems, beams").
Path filled_slash(double unit) {
  return polygon(Part::slash_head, scaled({{-0.95, 1}, {-0.25, 1}, {0.95, -1}, {0.25, -1}}, unit));
}

Path open_slash(double unit) {
  Path path = polygon(Part::slash_head, scaled({{-1.30, 1}, {-0.10, 1}, {1.30, -1}, {0.10, -1}}, unit));
  // The hole runs the other way round, so that a non-zero winding leaves it open.
  add_polygon(path, scaled({{-0.90, 0.80}, {0.06, -0.80}, {0.90, -0.80}, {-0.06, 0.80}}, unit));
  return path;
}

void add_ghost(Layer& layer, const Context& context, bool open) {
  const double sp = context.space;
  const Path head = open ? open_slash(sp * p::ghost_scale) : filled_slash(sp * p::ghost_scale);
  layer.path(head, bounds(head));
  for (const int side : {-1, 1}) {
    const double tips = (open ? p::ghost_tips + 0.3 : p::ghost_tips) * sp;
    const Path paren =
        parenthesis(Part::slash_head, {side * tips, 0}, side, 0.92 * sp, p::ghost_bulge * sp, 0.136 * sp);
    layer.path(paren, bounds(paren));
  }
}

void add_diamond(Layer& layer, const Context& context) {
  const double half = p::harmonic_head * context.space;
  Path path = stroked(Part::slash_head, {{-half, 0}, {0, -half}, {half, 0}, {0, half}}, 0.15 * context.space);
  path.segments.push_back({sheet::Segment::Kind::close, {}, {}, {}});
  layer.path(path, bounds(path));
}

bool open_value(const score::Event& event) {
  return event.value.log2 <= 1 && !event.beat_slash;
}

void add_head(Layer& layer, const Context& context, const score::Event& event, std::vector<LineGap>& gaps) {
  const double sp = context.space;
  const bool open = open_value(event);
  switch (head_of(event)) {
    case HeadKind::normal: {
      const Path head = open ? open_slash(sp) : filled_slash(sp);
      layer.path(head, bounds(head));
      // The staff line is not seen through an open head: in its middle the hole is 0.42 spaces to each side.
      if (open) gaps.push_back({0, -0.5 * sp, 0.5 * sp});
      break;
    }
    case HeadKind::dead: {
      const Path head = cross(Part::slash_head, {0, 0}, p::dead_head * sp, 0.20 * sp);
      layer.path(head, bounds(head));
    } break;
    case HeadKind::ghost:
      add_ghost(layer, context, open);
      if (open) gaps.push_back({0, -0.39 * sp, 0.39 * sp});
      break;
    case HeadKind::harmonic:
      add_diamond(layer, context);
      gaps.push_back({0, -0.7 * sp, 0.7 * sp});
      break;
  }
}

// The sign of an event's flags, hung from its stem's tip.
Words flag_sign(const Context& context, const score::Event& event) {
  // U+1D16E to U+1D172 are the flags of an eighth to a hundred-twenty-eighth.
  const char32_t code_point = U'\U0001D16E' + static_cast<char32_t>(std::min(event.value.beams(), 5) - 1);
  return context.type.sign(code_point, context.space, Part::flag);
}

bool flagged(const score::Event& event) {
  return event.value.beams() > 0 && !event.beamed();
}

// Tremolo strokes stand between the head and what hangs from the stem's tip.
constexpr double tremolo_from = 1.2;
constexpr double flag_clearance = 0.2;

void add_tremolo(Layer& layer, const Context& context, const score::Event& event) {
  const double sp = context.space;
  const double reach = tremolo_reach(context, event);
  if (!has_stem(context, event)) {
    layer.add(tremolo_sign(context, event, {0, -tremolo_from * sp - reach}));
    return;
  }
  double top = stem_tip(context, event);
  if (event.beamed()) {
    top += (p::beam + p::beam_step * (event.value.beams() - 1)) * sp;
  } else if (flagged(event)) {
    const Words flag = flag_sign(context, event);
    top += flag.ink.bottom - flag.ink.top;
  }
  const double least = -tremolo_from * sp - reach;
  layer.add(tremolo_sign(context, event, {stem_x(context, event), std::min(least, (top - p::head * sp) / 2)}));
}

void add_stem(Layer& layer, const Context& context, const score::Event& event) {
  const double sp = context.space;
  const double x = stem_x(context, event);
  const double tip = stem_tip(context, event);
  double foot = -1;
  if (head_of(event) == HeadKind::dead) foot = -0.55;
  if (head_of(event) == HeadKind::ghost) foot = -p::ghost_scale;
  if (head_of(event) == HeadKind::harmonic) foot = -0.05;
  layer.rule(Part::stem, {x, foot * sp}, {x, tip}, p::stem * sp);
  if (!flagged(event)) return;
  const Words flag = flag_sign(context, event);
  layer.words(flag, x - p::stem * sp / 2 - flag.ink.left, tip - flag.ink.top);
}

void add_dots(Layer& layer, const Context& context, const score::Event& event) {
  const double sp = context.space;
  const double y = -0.5 * sp;
  double x = head_reach(context, event) + p::dot_right * sp;
  if (event.value.dots > 0 && flagged(event)) {
    // A flag that comes down as far as the dot has the dot right of it.
    const Words flag = flag_sign(context, event);
    const double height = flag.ink.bottom - flag.ink.top;
    const double right = stem_x(context, event) - p::stem * sp / 2 + flag.ink.right - flag.ink.left;
    if (stem_tip(context, event) + height > y - 2 * p::dot_radius * sp) x = std::max(x, right + 0.4 * sp);
  }
  for (int i = 0; i < event.value.dots; ++i) {
    const Path dot = disc(Part::dot, {x + 0.6 * i * sp, y}, p::dot_radius * sp);
    layer.path(dot, bounds(dot));
  }
}

}  // namespace

HeadKind head_of(const score::Event& event) {
  if (event.strum == lesson::Strum::muted) return HeadKind::dead;
  if (event.strum == lesson::Strum::ghost) return HeadKind::ghost;
  return event.slash;
}

bool has_stem(const Context& context, const score::Event& event) {
  return !event.rest && !event.blank && !event.beat_slash && !context.stemless && event.value.log2 >= 1;
}

double head_reach(const Context& context, const score::Event& event) {
  switch (head_of(event)) {
    case HeadKind::dead:
      return p::dead_head * context.space;
    case HeadKind::harmonic:
      return (p::harmonic_head + 0.1) * context.space;
    case HeadKind::ghost:
      return (p::ghost_tips + p::ghost_bulge + (open_value(event) ? 0.3 : 0)) * context.space;
    case HeadKind::normal:
      break;
  }
  return (open_value(event) ? p::open_head : p::head) * context.space;
}

double stem_x(const Context& context, const score::Event& event) {
  double reach = open_value(event) ? p::open_head : p::head;
  if (head_of(event) == HeadKind::dead) reach = p::dead_head + 0.05;
  if (head_of(event) == HeadKind::ghost) reach *= p::ghost_scale;
  if (head_of(event) == HeadKind::harmonic) reach = p::harmonic_head + 0.06;
  return (reach - p::stem / 2) * context.space;
}

double stem_tip(const Context& context, const score::Event& event) {
  double length = stem_length(context);
  // A flag would cut the parenthesis of a ghost note: its stem is longer.
  if (head_of(event) == HeadKind::ghost && flagged(event)) length += 0.6;
  double tip = length * context.space;
  if (flagged(event) && context.in_tremolo(event)) {
    const Words flag = flag_sign(context, event);
    const double strokes = tremolo_from * context.space + 2 * tremolo_reach(context, event);
    tip = std::max(tip, strokes + flag_clearance * context.space + flag.ink.bottom - flag.ink.top);
  }
  return -tip;
}

Layer slash_event(const Context& context, const score::Event& event, std::vector<LineGap>& gaps) {
  if (event.blank) return {};
  if (event.rest) return rest_sign(context, event, 0);
  Layer layer;
  add_head(layer, context, event, gaps);
  if (has_stem(context, event)) add_stem(layer, context, event);
  if (!event.beat_slash) add_dots(layer, context, event);
  if (context.in_tremolo(event)) add_tremolo(layer, context, event);
  layer.add(articulations(context, event, (event.tie_to || event.tie_from ? 2.75 : 1.8) * context.space, 1));
  return layer;
}

}  // namespace fretsheaf::layout
