#include <algorithm>
#include <set>

#include "layout/music_notes.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {

using score::HeadKind;
using sheet::Part;
namespace p = proportion;

namespace {

// In staff spaces: the first two as the music font has them, ledger lines 0.4 beyond the head as SMuFL's
// example value for legerLineExtension (from memory), all else chosen by eye.
constexpr double head_half = 0.594;
constexpr double whole_half = 0.828;
constexpr double dead_half = 0.57;
constexpr double diamond_half = 0.64;
constexpr double paren_gap = 0.16;  // from the head to a parenthesis' tips
constexpr double paren_bulge = 0.34;
constexpr double ledger = 0.18;
constexpr double ledger_beyond = 0.4;

char32_t head_sign(int value_log2) {
  if (value_log2 <= 0) return U'\U0001D15D';
  return value_log2 == 1 ? U'\U0001D157' : U'\U0001D158';
}

double half_width(HeadKind kind, int value_log2) {
  if (kind == HeadKind::dead) return dead_half;
  if (kind == HeadKind::harmonic) return diamond_half;
  return value_log2 <= 0 ? whole_half : head_half;
}

// How far it reaches with its parentheses.
double reach(HeadKind kind, int value_log2) {
  const double half = half_width(kind, value_log2);
  return kind == HeadKind::ghost ? half + paren_gap + paren_bulge : half;
}

void add_diamond(Layer& layer, sheet::Point c, double sp) {
  const double x = (diamond_half - 0.09) * sp;
  const double y = 0.5 * sp;
  sheet::Path path =
      stroked(Part::note_head, {{c.x - x, c.y}, {c.x, c.y - y}, {c.x + x, c.y}, {c.x, c.y + y}}, 0.15 * sp);
  path.segments.push_back({sheet::Segment::Kind::close, {}, {}, {}});
  layer.path(path, bounds(path));
}

void add_parentheses(Layer& layer, sheet::Point c, double half, double sp) {
  for (const int side : {-1, 1}) {
    const sheet::Path paren = parenthesis(Part::note_head, {c.x + side * (half + paren_gap) * sp, c.y}, side, 0.85 * sp,
                                          paren_bulge * sp, 0.13 * sp);
    layer.path(paren, bounds(paren));
  }
}

void add_ledgers(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord) {
  const auto draw = [&](int step, auto reaches) {
    double left = 0;
    double right = 0;
    bool any = false;
    for (const StaffHead& head : chord.heads) {
      if (!reaches(head.step)) continue;
      const double x = head_x(context, event, chord, head);
      const double half = note_head_half(context, event, head.note->head);
      left = any ? std::min(left, x - half) : x - half;
      right = any ? std::max(right, x + half) : x + half;
      any = true;
    }
    add_ledger_lines(layer, context, step, left, right);
  };
  for (int step = 6; step <= chord.highest(); step += 2) {
    draw(step, [step](int head) { return head >= step; });
  }
  for (int step = -6; step >= chord.lowest(); step -= 2) {
    draw(step, [step](int head) { return head <= step; });
  }
}

// The spaces that a chord's dots stand in, by their steps: a head's own, or the one above its line; where that has a
// dot already, the one below (common practice).
std::set<int> dot_steps(const StaffChord& chord) {
  std::set<int> steps;
  for (std::size_t i = chord.heads.size(); i-- > 0;) {
    const int step = chord.heads[i].step;
    // Two heads on one line or in one space share a dot.
    if (i + 1 < chord.heads.size() && chord.heads[i + 1].step == step) continue;
    const bool on_line = step % 2 == 0;
    const int own = on_line ? step + 1 : step;
    steps.insert(steps.contains(own) && on_line ? step - 1 : own);
  }
  return steps;
}

void add_dots(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord) {
  const double sp = context.space;
  double edge = 0;
  for (const StaffHead& head : chord.heads) {
    edge = std::max(edge, head_x(context, event, chord, head) + reach(head.note->head, event.value.log2) * sp);
  }
  // The flag of an upward stem hangs where the dot would be.
  const bool flagged = chord.up && event.value.beams() > 0 && !event.beamed();
  if (flagged) edge = std::max(edge, note_stem_x(context, chord) + 0.85 * sp);
  for (const int step : dot_steps(chord)) {
    for (int i = 0; i < event.value.dots; ++i) {
      const double x = edge + (0.5 + 0.6 * i) * sp;
      const sheet::Path dot = disc(Part::dot, {x, step_y(context, step)}, p::dot_radius * sp);
      layer.path(dot, bounds(dot));
    }
  }
}

void add_single_stem(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord) {
  const std::optional<NoteStem> stem = single_stem(context, event, chord);
  if (!stem) return;
  const double sp = context.space;
  layer.rule(Part::stem, {stem->x, stem->foot}, {stem->x, stem->tip}, p::stem * sp);
  const int flags = event.value.beams();
  if (flags == 0) return;
  const double left = stem->x - p::stem * sp / 2;
  if (stem->up) {
    const Words flag = upward_flag(context, flags);
    layer.words(flag, left - flag.ink.left, stem->tip - flag.ink.top);
    return;
  }
  for (int i = 0; i < flags; ++i) {
    const sheet::Path flag = downward_flag(left, stem->tip - p::beam_step * i * sp, sp);
    layer.path(flag, bounds(flag));
  }
}

}  // namespace

double step_y(const Context& context, int step) {
  return (4 - step) * context.space / 2;
}

double note_head_half(const Context& context, const score::Event& event, HeadKind kind) {
  return half_width(kind, event.value.log2) * context.space;
}

double head_x(const Context& context, const score::Event& event, const StaffChord& chord, const StaffHead& head) {
  if (!head.displaced) return 0;
  const double half = event.value.log2 <= 0 ? whole_half : head_half;
  return (chord.up ? 1 : -1) * (2 * half - p::stem) * context.space;
}

void add_note_head(Layer& layer, const Context& context, HeadKind kind, int value_log2, sheet::Point centre,
                   double size) {
  const double sp = context.space * size;
  if (kind == HeadKind::dead) {
    const sheet::Path head = cross(Part::note_head, centre, (dead_half - 0.07) * sp, 0.2 * sp);
    layer.path(head, bounds(head));
    return;
  }
  if (kind == HeadKind::harmonic) return add_diamond(layer, centre, sp);
  const Words head = context.type.sign(head_sign(value_log2), sp, Part::note_head);
  layer.centred(head, centre.x, centre.y - (head.ink.top + head.ink.bottom) / 2);
  if (kind == HeadKind::ghost) add_parentheses(layer, centre, half_width(kind, value_log2), sp);
}

void add_ledger_lines(Layer& layer, const Context& context, int step, double left, double right, double size) {
  const double beyond = ledger_beyond * size * context.space;
  const double y = step_y(context, step);
  layer.rule(Part::ledger_line, {left - beyond, y}, {right + beyond, y}, ledger * context.space);
}

Layer notes_event(const Context& context, int bar, int index) {
  const score::Event& event = context.event(bar, index);
  const StaffChord& chord = context.chord(bar, index);
  const double sp = context.space;
  if (event.rest) {
    // A whole rest hangs from the fourth line, all others have their middle on the third.
    const bool whole = event.whole_bar_rest || event.value.log2 <= 0;
    return rest_sign(context, event, whole ? sp : 2 * sp);
  }
  Layer layer;
  if (chord.heads.empty()) return layer;
  for (const StaffHead& head : chord.heads) {
    add_note_head(layer, context, head.note->head, event.value.log2,
                  {head_x(context, event, chord, head), step_y(context, head.step)});
  }
  add_ledgers(layer, context, event, chord);
  add_accidentals(layer, context, chord);
  add_note_graces(layer, context, chord);
  add_dots(layer, context, event, chord);
  if (!event.beamed()) {
    add_single_stem(layer, context, event, chord);
    add_note_tremolo(layer, context, event, chord, single_stem(context, event, chord));
  }
  if (!context.staves.slash) add_note_articulations(layer, context, event, chord);
  return layer;
}

}  // namespace fretsheaf::layout
