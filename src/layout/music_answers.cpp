#include "layout/music_draw.h"

namespace fretsheaf::layout {

using sheet::Part;

namespace {

constexpr std::uint8_t shade = 0xDE;  // 87 % white (engraving.md, rule 11)
constexpr double shade_margin = 2.5;
constexpr double chord_line_weight = 0.5;
constexpr double chord_line_drop = 2;  // under the baseline
constexpr double chord_line_inset = 1.2;

}  // namespace

sheet::Path answer_shade(const LinePlan& line, double top, double bottom) {
  sheet::Path path = polygon(Part::answer, {{line.prefix, top - shade_margin},
                                            {line.width, top - shade_margin},
                                            {line.width, bottom + shade_margin},
                                            {line.prefix, bottom + shade_margin}});
  path.fill = sheet::Color{shade, shade, shade};
  return path;
}

Layer chord_lines(const Context& context, const LinePlan& line) {
  Layer layer;
  const double inset = chord_line_inset * context.space;
  double begin = line.prefix;
  for (const Stop& stop : line.stops) {
    const bool open_end = &stop == &line.stops.back() && stop.kind == StopKind::end && stop.meter == nullptr;
    if (stop.kind != StopKind::bar_line && !open_end) continue;
    const double from = begin + inset;
    const double to = stop.x - inset;
    if (to > from) layer.rule(Part::answer, {from, chord_line_drop}, {to, chord_line_drop}, chord_line_weight);
    begin = stop.x;
  }
  return layer;
}

}  // namespace fretsheaf::layout
