#include <algorithm>
#include <string>

#include "layout/music_draw.h"

namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;

namespace {

constexpr double box_height = 1.333;  // of the section's type size: 16 at 12
constexpr double hook = 2.18;         // spaces: 12 points
constexpr double number_right = 0.91;
constexpr double number_down = 1.82;
constexpr double bracket_gap = 0.55;  // half of what lies between two brackets

Layer section_box(const Context& context, const std::string& name, double left) {
  Layer layer;
  const double size = context.type.look().style(Role::section).size;
  const double cap = context.type.cap_height(Role::section);
  const double height = box_height * size;
  const Words words = context.type.set(Role::section, name, Part::section_box);
  const double text_width = words.ink.right - words.ink.left;
  const double width = std::max(height, text_width + height - cap);
  const double top = -cap / 2 - height / 2;
  const double line = 0.075 * size;
  sheet::Path box = stroked(Part::section_box,
                            {{left + line / 2, top + line / 2},
                             {left + width - line / 2, top + line / 2},
                             {left + width - line / 2, top + height - line / 2},
                             {left + line / 2, top + height - line / 2}},
                            line);
  box.segments.push_back({sheet::Segment::Kind::close, {}, {}, {}});
  layer.path(box, {left, top, left + width, top + height});
  layer.centred(words, left + width / 2, 0);
  return layer;
}

const Stop* first_of_bar(const LinePlan& line, int bar) {
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::column && stop.column->bar == bar) return &stop;
  }
  return nullptr;
}

const Stop* bar_line_of(const LinePlan& line, int bar) {
  for (const Stop& stop : line.stops) {
    if (stop.kind == StopKind::bar_line && stop.bar == bar) return &stop;
  }
  return nullptr;
}

}  // namespace

Sections sections(const Context& context, const LinePlan& line) {
  Sections drawn;
  for (std::size_t i = 0; i < line.stops.size(); ++i) {
    const Stop& stop = line.stops[i];
    if (stop.kind != StopKind::column) continue;
    for (const lesson::Word& word : context.bar(stop.column->bar).sections) {
      if (word.at != stop.column->at) continue;
      if (i == 1) {
        drawn.at_start.add(section_box(context, word.text, 0));
      } else {
        const bool opens_bar = line.stops[i - 1].kind == StopKind::bar_line;
        const double left =
            opens_bar ? line.stops[i - 1].x + bracket_gap * context.space : stop.x - proportion::head * context.space;
        drawn.others.add(section_box(context, word.text, left));
      }
    }
  }
  return drawn;
}

Layer endings(const Context& context, const LinePlan& line) {
  Layer layer;
  const double sp = context.space;
  for (const lesson::Ending& ending : context.example.endings) {
    const int first = line.stops.front().bar;
    const int last = line.stops.back().bar;
    if (ending.last_bar < first || ending.first_bar > last) continue;
    const Stop* begin = ending.first_bar >= first ? first_of_bar(line, ending.first_bar) : nullptr;
    const Stop* end = ending.last_bar <= last ? bar_line_of(line, ending.last_bar) : nullptr;
    double left = line.prefix;
    if (begin != nullptr && begin != &line.stops[1]) left = (begin - 1)->x + bracket_gap * sp;
    double right = line.width - proportion::bracket * sp / 2;
    if (end != nullptr && end + 1 != &line.stops.back() + 1) right = end->x - bracket_gap * sp;
    const double width = proportion::bracket * sp;
    std::vector<sheet::Point> points;
    if (begin != nullptr) points.push_back({left, hook * sp});
    points.push_back({left, 0});
    points.push_back({right, 0});
    if (end != nullptr) points.push_back({right, hook * sp});
    const sheet::Path bracket = stroked(Part::ending_bracket, points, width);
    // Its ink is the line and the hooks: chords stand under the line.
    layer.thin(bracket);
    if (begin == nullptr) continue;
    const Words number = context.type.set(Role::ending, ending.label, Part::ending_bracket);
    layer.words(number, left + number_right * sp, number_down * sp);
  }
  return layer;
}

}  // namespace fretsheaf::layout
