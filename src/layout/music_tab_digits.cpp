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

void add_dead(Layer& layer, const Context& context, double y) {
  const double half = p::dead_digit * context.tab;
  const double w = 0.156 * context.tab / std::sqrt(2.0) / 2;
  for (const double side : {1.0, -1.0}) {
    const Path stroke = polygon(Part::digit, {{-half - w, y - side * (half - w)},
                                              {-half + w, y - side * (half + w)},
                                              {half + w, y + side * (half - w)},
                                              {half - w, y + side * (half + w)}});
    layer.path(stroke, bounds(stroke));
  }
}

void add_parentheses(Layer& layer, const Context& context, double y, double reach) {
  for (const int side : {-1, 1}) {
    const Path paren = parenthesis(Part::digit_mark, {side * (reach + 0.1 * context.tab), y}, side, 0.575 * context.tab,
                                   0.2 * context.tab, 0.095 * context.tab);
    layer.path(paren, bounds(paren));
  }
}

void add_angles(Layer& layer, const Context& context, double y, double reach) {
  for (const int side : {-1, 1}) {
    const double foot = side * (reach + 0.14 * context.tab);
    const double point = foot + side * 0.325 * context.tab;
    const Path angle =
        stroked(Part::digit_mark, {{foot, y - 0.525 * context.tab}, {point, y}, {foot, y + 0.525 * context.tab}},
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
    add_dead(layer, context, y);
    return (p::dead_digit + 0.055) * context.tab;
  }
  const double size = digit_size(context, tied);
  const Words digit = context.type.set_at_size(Role::digit, size, std::to_string(note.place.fret), Part::digit);
  const double cap = context.type.cap_height(Role::digit) * size / context.type.look().style(Role::digit).size;
  layer.centred(digit, 0, y + cap / 2);
  return (digit.ink.right - digit.ink.left) / 2;
}

}  // namespace

Layer tab_digits(const Context& context, const score::Event& event, bool tied, std::vector<LineGap>& gaps) {
  Layer layer;
  for (const score::Note& note : event.notes) {
    if (note.tie_from != tied) continue;
    const double y = (note.place.string - 1) * context.tab;
    double reach = add_digit(layer, context, note, tied, y);
    if (note.head == score::HeadKind::ghost) {
      add_parentheses(layer, context, y, reach);
      reach += p::ghost_digit * context.tab;
    }
    if (note.head == score::HeadKind::harmonic) {
      add_angles(layer, context, y, reach);
      reach += 0.5 * context.tab;
    }
    reach += p::digit_gap * context.tab;
    gaps.push_back({note.place.string, -reach, reach});
  }
  return layer;
}

}  // namespace fretsheaf::layout
