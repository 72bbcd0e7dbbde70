#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {
namespace {

namespace p = proportion;

struct TieStyle {
  double y = 0;      // of its ends
  double inset = 0;  // from the columns' centres
  double under = 0;  // of its ends where it passes a time signature
  double aside = 0;  // and how far they then stand from the centres, beside what hangs under the heads
};

// Ties between the events of a line; one that comes from the line before or goes on in the next is drawn to the edge.
class Ties {
 public:
  Ties(const Context& context, const LinePlan& line, const TieStyle& style)
      : context_(context), line_(line), style_(style) {}

  Layer draw() {
    const Stop* before = nullptr;
    for (std::size_t i = 0; i < line_.stops.size(); ++i) {
      if (!line_.is_event(i)) continue;
      const Stop& stop = line_.stops[i];
      if (event(stop).tie_from && before == nullptr) {
        tie(std::max(stop.x - 3 * sp(), line_.prefix), stop.x - style_.inset, style_.y);
      } else if (event(stop).tie_from && event(*before).tie_to) {
        const bool passes = std::any_of(before, &stop, [](const Stop& s) { return s.meter != nullptr; });
        const double inset = passes ? style_.aside : style_.inset;
        tie(before->x + inset, stop.x - inset, passes ? style_.under : style_.y);
      }
      before = &stop;
    }
    if (before != nullptr && event(*before).tie_to && !line_.last_line) tie(before->x + style_.inset, end(), style_.y);
    return std::move(layer_);
  }

 private:
  double sp() const { return context_.space; }
  const score::Event& event(const Stop& stop) const { return context_.event(stop.column->bar, stop.column->event); }

  // Where the line's last bar ends: a change of meter may be announced after it.
  double end() const {
    const double gap = 0.6 * sp();
    for (std::size_t i = line_.stops.size(); i-- > 0;) {
      if (line_.stops[i].kind == StopKind::bar_line) return line_.stops[i].x - gap;
    }
    return line_.width - gap;
  }

  void tie(double from, double to, double y) {
    const double drop = std::min(p::tie_drop * sp(), 0.3 * (to - from));
    const sheet::Path path = crescent(sheet::Part::tie, {from, y}, {to, y}, -drop, 0.22 * sp(), 0.09 * sp());
    layer_.path(path, bounds(path));
  }

  const Context& context_;
  const LinePlan& line_;
  TieStyle style_;
  Layer layer_;
};

}  // namespace

Layer slash_ties(const Context& context, const LinePlan& line) {
  const double sp = context.space;
  return Ties(context, line, {1.25 * sp, 0.3 * sp, 2.25 * sp, 0.9 * sp}).draw();
}

Layer tab_ties(const Context& context, const LinePlan& line) {
  const double y = tab_stem_tip(context) + 0.4 * context.space;
  return Ties(context, line, {y, 0.5 * context.space, y, 0.5 * context.space}).draw();
}

}  // namespace fretsheaf::layout
