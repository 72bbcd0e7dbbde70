#include <algorithm>
#include <utility>

#include "layout/music_notes.h"

namespace fretsheaf::layout {
namespace {

// In staff spaces; the first is the house's measure, the others are chosen by eye.
constexpr double to_head = 0.28;
constexpr double to_accidental = 0.15;
constexpr double to_ledger = 0.12;

// A sign of the music font: how it is scaled to be as tall as the trade draws it, and where in its ink the line or
// space is that it stands on, from its top at 0 to its bottom at 1.
struct Shape {
  char32_t code_point;
  double scale;
  double centre;
};

Shape shape_of(int alteration) {
  switch (alteration) {
    case -2:
      return {U'\U0001D12B', 0.9, 0.75};
    case -1:
      return {U'\u266D', 1.0, 0.74};
    case 1:
      return {U'\u266F', 0.84, 0.5};
    case 2:
      return {U'\U0001D12A', 0.95, 0.5};
    default:
      return {U'\u266E', 1.0, 0.5};
  }
}

bool level(const sheet::Box& a, const sheet::Box& b) {
  return a.top < b.bottom && b.top < a.bottom;
}

// The order in which the accidentals of a chord take their places: highest, lowest, second highest … (Gould, Behind
// Bars, 2011, pp. 88-90, from memory).
std::vector<const StaffHead*> in_order(const StaffChord& chord) {
  std::vector<const StaffHead*> marked;
  for (const StaffHead& head : chord.heads) {
    if (head.note->accidental) marked.push_back(&head);
  }
  std::vector<const StaffHead*> order;
  std::size_t low = 0;
  std::size_t high = marked.size();
  while (low < high) {
    order.push_back(marked[--high]);
    if (low < high) order.push_back(marked[low++]);
  }
  return order;
}

}  // namespace

double add_accidental(Layer& layer, const Context& context, int alteration, double right, double y, sheet::Part part,
                      double size) {
  const Shape shape = shape_of(alteration);
  const Words sign = context.type.sign(shape.code_point, context.space * shape.scale * size, part);
  const double centre = sign.ink.top + shape.centre * (sign.ink.bottom - sign.ink.top);
  layer.words(sign, right - sign.ink.right, y - centre);
  return right - (sign.ink.right - sign.ink.left);
}

void add_accidentals(Layer& layer, const Context& context, const StaffChord& chord) {
  const double sp = context.space;
  std::vector<std::pair<sheet::Box, double>> taken;  // with the gap that each asks for
  for (const sheet::Box& ink : layer.ink()) {
    const bool ledger = ink.bottom - ink.top < 0.3 * sp;
    taken.push_back({ink, (ledger ? to_ledger : to_head) * sp});
  }
  for (const StaffHead* head : in_order(chord)) {
    // Drawn once at 0 to know its box, then where nothing that is level with it is in its way.
    Layer sign;
    add_accidental(sign, context, head->note->accidental->alteration, 0, step_y(context, head->step),
                   sheet::Part::accidental);
    if (sign.ink().empty()) continue;
    const sheet::Box box = sign.ink().front();
    double right = 0;
    for (bool moved = true; moved;) {
      moved = false;
      for (const auto& [other, gap] : taken) {
        const sheet::Box here = layout::moved(box, right, 0);
        if (!level(here, other) || here.right + gap <= other.left + 1e-9 || here.left - gap >= other.right) continue;
        right = other.left - gap;
        moved = true;
      }
    }
    taken.push_back({layout::moved(box, right, 0), to_accidental * sp});
    layer.add(std::move(sign), right, 0);
  }
}

}  // namespace fretsheaf::layout
