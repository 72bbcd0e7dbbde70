#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

struct TieStyle {
  double y = 0;      // of its ends
  double inset = 0;  // from the columns' centres
};

// Ties between the events of a line; one that comes from the line before or goes on in the next is drawn to the edge.
Layer ties(const Context& context, const LinePlan& line, TieStyle style) {
  Layer layer;
  const double sp = context.space;
  const auto draw = [&](double from, double to) {
    const double drop = std::min(p::tie_drop * sp, 0.3 * (to - from));
    const sheet::Path tie = crescent(sheet::Part::tie, {from, style.y}, {to, style.y}, -drop, 0.22 * sp, 0.09 * sp);
    layer.path(tie, bounds(tie));
  };
  const Stop* before = nullptr;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Stop& stop = line.stops[i];
    const score::Event& event = context.event(stop.column->bar, stop.column->event);
    const bool tied_before = before != nullptr && context.event(before->column->bar, before->column->event).tie_to;
    if (event.tie_from && before == nullptr) {
      draw(std::max(stop.x - 3 * sp, line.prefix), stop.x - style.inset);
    } else if (event.tie_from && tied_before) {
      draw(before->x + style.inset, stop.x - style.inset);
    }
    before = &stop;
  }
  if (before == nullptr) return layer;
  const score::Event& last = context.event(before->column->bar, before->column->event);
  if (last.tie_to && !line.last_line) draw(before->x + style.inset, line.width - 0.6 * sp);
  return layer;
}

}  // namespace

Layer slash_ties(const Context& context, const LinePlan& line) {
  return ties(context, line, {1.25 * context.space, 0.3 * context.space});
}

Layer tab_ties(const Context& context, const LinePlan& line) {
  return ties(context, line, {tab_stem_tip(context) + 0.4 * context.space, 0.5 * context.space});
}

}  // namespace fretsheaf::layout
