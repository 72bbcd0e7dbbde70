#include "layout/music_draw.h"

namespace fretsheaf::layout {

using sheet::Part;

namespace {

constexpr double ground_margin = 2.5;
constexpr double chord_line_weight = 0.5;
constexpr double chord_line_drop = 2;  // under the baseline
constexpr double chord_line_inset = 1.2;

}  // namespace

sheet::Path answer_ground(const sheet::Box& band) {
  return filled(Part::answer, {band.left, band.top - ground_margin, band.right, band.bottom + ground_margin}, ground);
}

std::vector<BarSpan> bars_to_write(const Context& context, const LinePlan& line) {
  std::vector<BarSpan> spans;
  double begin = line.prefix;
  int bar = line.first_bar();
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::column) bar = stop.bar;
    const bool open_end = &stop == &line.stops.back() && stop.kind == StopKind::end && stop.meter == nullptr;
    if (stop.kind != StopKind::bar_line && !open_end) continue;
    if (stop.x > begin && context.bar(bar).chords_to_write) spans.push_back({begin, stop.x});
    begin = stop.x;
  }
  return spans;
}

Layer chord_lines(const Context& context, const std::vector<BarSpan>& bars) {
  Layer layer;
  const double inset = chord_line_inset * context.space;
  for (const BarSpan& bar : bars) {
    if (bar.right - bar.left <= 2 * inset) continue;
    layer.rule(Part::answer, {bar.left + inset, chord_line_drop}, {bar.right - inset, chord_line_drop},
               chord_line_weight);
  }
  return layer;
}

}  // namespace fretsheaf::layout
