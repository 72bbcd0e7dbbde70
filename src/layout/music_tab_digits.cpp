#include <algorithm>
#include <cmath>
#include <string>

#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;
using sheet::Path;
using templates::Role;
namespace p = proportion;

namespace {

// `half_height` in tab gaps: the house's measure is 0.575, less where the next string has a digit too.
void add_parentheses(Layer& layer, const Context& context, double y, double reach, double half_height) {
  for (const int side : {-1, 1}) {
    const Path paren = parenthesis(Part::digit_mark, {side * (reach + 0.1 * context.tab), y}, side,
                                   half_height * context.tab, 0.2 * context.tab, 0.095 * context.tab);
    layer.path(paren, bounds(paren));
  }
}

void add_angles(Layer& layer, const Context& context, double y, double reach, double half_height) {
  for (const int side : {-1, 1}) {
    const double foot = side * (reach + 0.14 * context.tab);
    const double point = foot + side * 0.325 * context.tab;
    const Path angle = stroked(
        Part::digit_mark, {{foot, y - half_height * context.tab}, {point, y}, {foot, y + half_height * context.tab}},
        0.094 * context.tab);
    layer.path(angle, bounds(angle));
  }
}

// A tied digit at a new line stands at 80 %, but never under the template's least type.
double digit_size(const Context& context, bool tied) {
  const double size = context.type.look().style(Role::digit).size;
  return tied ? std::max(0.8 * size, std::min(size, context.type.look().least_type)) : size;
}

double add_digit(Layer& layer, const Context& context, const score::Note& note, bool tied, double y) {
  if (note.head == score::HeadKind::dead) {
    const Path digit = cross(Part::digit, {0, y}, p::dead_digit * context.tab, 0.156 * context.tab);
    layer.path(digit, bounds(digit));
    return (p::dead_digit + 0.055) * context.tab;
  }
  const double size = digit_size(context, tied);
  const Words digit = context.type.set_at_size(Role::digit, size, std::to_string(note.place.fret), Part::digit);
  const double cap = context.type.cap_height(Role::digit) * size / context.type.look().style(Role::digit).size;
  layer.centred(digit, 0, y + cap / 2);
  return (digit.ink.right - digit.ink.left) / 2;
}

}  // namespace

Layer tab_digits(const Context& context, int bar, int index, bool at_line_start, std::vector<LineGap>& gaps) {
  Layer layer;
  const score::Event& event = context.event(bar, index);
  for (const score::Note& note : event.notes) {
    const bool always = !note.tie_from || leads_on(context, bar, index, note.place.string);
    if (always == at_line_start) continue;
    const double y = (note.place.string - 1) * context.tab;
    double reach = add_digit(layer, context, note, note.tie_from, y);
    if (note.head == score::HeadKind::ghost) {
      add_parentheses(layer, context, y, reach, event.notes.size() > 1 ? 0.48 : 0.575);
      reach += p::ghost_digit * context.tab;
    }
    if (note.head == score::HeadKind::harmonic) {
      add_angles(layer, context, y, reach, event.notes.size() > 1 ? 0.44 : 0.525);
      reach += 0.5 * context.tab;
    }
    reach += p::digit_gap * context.tab;
    gaps.push_back({note.place.string, -reach, reach});
  }
  return layer;
}

}  // namespace fretsheaf::layout
