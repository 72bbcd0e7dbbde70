#include <algorithm>

#include "layout/music_notes.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;
using sheet::Segment;
namespace p = proportion;

namespace {

constexpr double dot_down = 0.2;  // of a dot under the stem's foot, in spaces; chosen by eye

}  // namespace

sheet::Path downward_flag(double x, double tip, double sp) {
  const auto at = [&](double dx, double up) { return sheet::Point{x + dx * sp, tip - up * sp}; };
  sheet::Path path;
  path.part = Part::flag;
  path.fill = sheet::Color{};
  path.segments = {
      {Segment::Kind::move, at(0, 0), {}, {}},
      {Segment::Kind::curve, at(0.98, 1.5), at(0.08, 0.7), at(0.82, 0.9)},
      {Segment::Kind::curve, at(0.74, 2.55), at(1.1, 1.9), at(0.98, 2.3)},
      {Segment::Kind::curve, at(0, 0.85), at(0.95, 1.75), at(0.62, 1.15)},
      {Segment::Kind::close, {}, {}, {}},
  };
  return path;
}

double tab_stem_foot(const Context& context) {
  return context.tab_height() + 0.8 * context.tab;
}

double tab_stem_tip(const Context& context) {
  const double strokes = context.tremolo.empty() ? 0 : 1.5;  // room for them beside dots and flags
  return tab_stem_foot(context) + (3.0 + strokes + 0.75 * std::max(0, context.most_beams - 2)) * context.space;
}

Layer tab_rhythm(const Context& context, const score::Event& event) {
  if (event.blank) return {};
  if (event.rest) return rest_sign(context, event, context.tab_height() / 2);
  Layer layer;
  const double sp = context.space;
  const double foot = tab_stem_foot(context);
  const double tip = tab_stem_tip(context);
  if (context.stemless) {
    // The room that the stems will need.
    layer.reserve({-sp, foot, sp, tip});
    layer.add(articulations(context, event, tip + sp, 1));
    return layer;
  }
  // A half note's stem is half as long, and a whole note has none (common practice of stems under tablature).
  const bool half = event.value.log2 == 1;
  const double end = half ? (foot + tip) / 2 : tip;
  if (event.value.log2 >= 1) layer.rule(Part::stem, {0, foot}, {0, end}, p::stem * sp);
  if (context.in_tremolo(event)) {
    const double dots = event.value.dots > 0 ? dot_down + p::dot_radius + 0.15 : 0.15;
    layer.add(tremolo_sign(context, event, {0, foot + dots * sp + tremolo_reach(context, event)}));
  }
  if (!event.beamed()) {
    for (int i = 0; i < event.value.beams(); ++i) {
      const sheet::Path flag = downward_flag(-p::stem * sp / 2, tip - 0.75 * i * sp, sp);
      layer.path(flag, bounds(flag));
    }
  }
  for (int i = 0; i < event.value.dots; ++i) {
    const sheet::Path dot = disc(Part::dot, {(0.65 + 0.6 * i) * sp, foot + dot_down * sp}, p::dot_radius * sp);
    layer.path(dot, bounds(dot));
  }
  // A tie lies under the tips.
  const bool tied = event.tie_from || event.tie_to;
  layer.add(articulations(context, event, tip + (tied ? 2.1 : 1.0) * sp, 1));
  return layer;
}

}  // namespace fretsheaf::layout
