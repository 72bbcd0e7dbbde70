#include <algorithm>
#include <string>

#include "layout/ink.h"
#include "layout/music_draw.h"
#include "layout/paragraph.h"
#include "words/language.h"

namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;

namespace {

constexpr double box_height = 1.333;  // of the section's type size: 16 at 12
constexpr double name_leading = 1.2;  // of the type size, in a name of several lines
constexpr double hook = 2.18;         // spaces: 12 points
constexpr double number_right = 0.91;
constexpr double number_down = 1.82;
constexpr double bracket_gap = 0.55;  // half of what lies between two brackets

// The frame around a box's words, `line` thick.
void add_frame(Layer& layer, const sheet::Box& box, double line) {
  const double half = line / 2;
  layer.path(framed(Part::section_box, {box.left + half, box.top + half, box.right - half, box.bottom - half}, line),
             box);
}

// A name that is wider than the staff stands in several lines; the last has the baseline y = 0. A box that would leave
// the staff moves left.
Layer section_box(const Context& context, const std::string& name, double left, double staff_end) {
  Layer layer;
  const double size = context.type.look().style(Role::section).size;
  const double cap = context.type.cap_height(Role::section);
  const double line_height = box_height * size;
  const double padding = line_height - cap;
  const PlainStyle style{
      Role::section, 1, Part::section_box, std::string(words::language_code(context.score.language)), {}};
  std::vector<TextLine> lines = set_plain(name, staff_end - padding, style, context.type);
  std::vector<Words> words;
  double width = line_height;
  for (TextLine& line : lines) {
    const std::optional<sheet::Box> ink = ink_of(line.items, context.type);
    words.push_back({std::move(line.items), line.width, ink.value_or(sheet::Box{})});
    width = std::max(width, words.back().ink.right - words.back().ink.left + padding);
  }
  left = std::max(0.0, std::min(left, staff_end - width));
  const double above = static_cast<double>(words.size() - 1) * name_leading * size;
  const double bottom = -cap / 2 + line_height / 2;
  add_frame(layer, {left, bottom - line_height - above, left + width, bottom}, 0.075 * size);
  for (std::size_t i = 0; i < words.size(); ++i) {
    layer.centred(words[i], left + width / 2, static_cast<double>(i) * name_leading * size - above);
  }
  return layer;
}

// Where a bar begins; nullptr where that is in another line.
const Stop* begin_of_bar(const Context& context, const LinePlan& line, int bar) {
  for (const Stop& stop : line.stops) {
    if (stands_at(stop, {bar, context.bar(bar).begin})) return &stop;
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
        drawn.at_start.add(section_box(context, word.text, 0, line.width));
      } else {
        const bool opens_bar = line.stops[i - 1].kind == StopKind::bar_line;
        const double left =
            opens_bar ? line.stops[i - 1].x + bracket_gap * context.space : stop.x - proportion::head * context.space;
        drawn.others.push_back(section_box(context, word.text, left, line.width));
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
    const Stop* begin = ending.first_bar >= first ? begin_of_bar(context, line, ending.first_bar) : nullptr;
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
