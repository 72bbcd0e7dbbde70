#include "layout/music_groups.h"

#include <utility>

namespace fretsheaf::layout {
namespace {

TupletHere in_line(const score::Tuplet& tuplet, int bar, const LinePlan& line) {
  TupletHere here{&tuplet, {}};
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    if (!line.is_event(i)) continue;
    const Column& column = *line.stops[i].column;
    if (column.bar == bar && tuplet.first <= column.event && column.event <= tuplet.last) here.stops.push_back(i);
  }
  return here;
}

}  // namespace

std::vector<TupletHere> tuplets_here(const Context& context, const LinePlan& line) {
  std::vector<TupletHere> found;
  int last_bar = -1;
  for (const Stop& stop : line.stops) {
    if (stop.kind != StopKind::column || stop.bar == last_bar) continue;
    last_bar = stop.bar;
    if (context.bar(last_bar).same_as_previous) continue;
    for (const score::Tuplet& tuplet : context.bar(last_bar).tuplets) {
      TupletHere here = in_line(tuplet, last_bar, line);
      if (!here.stops.empty()) found.push_back(std::move(here));
    }
  }
  return found;
}

}  // namespace fretsheaf::layout
