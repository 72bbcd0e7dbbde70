#include <algorithm>

#include "layout/music_draw.h"
#include "layout/music_notes.h"
#include "layout/music_signs.h"

namespace fretsheaf::layout {
namespace {

// In staff spaces, chosen by eye.
constexpr double beyond_tie = 0.95;
constexpr double tremolo_from = 1.0;  // the strokes' edge, from the head's middle,
constexpr double tremolo_past = 1.6;  // and from one with an accidental where its stem is on that side
constexpr double past_parenthesis = 0.45;
constexpr double accent_beyond = 0.9;  // its middle, from the staff's outer line

}  // namespace

void add_note_articulations(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord) {
  const auto any = [&](bool score::Note::*flag) {
    return std::any_of(event.notes.begin(), event.notes.end(), [&](const score::Note& note) { return note.*flag; });
  };
  const double sp = context.space;
  // By the head, away from the stem (common practice).
  const int away = chord.up ? 1 : -1;
  const int outer = chord.foot();
  const bool on_line = outer % 2 == 0;
  const bool tied = any(&score::Note::tie_from) || any(&score::Note::tie_to);
  // Dots and dashes keep to the spaces inside the staff.
  double y = step_y(context, outer) + away * (on_line ? 1.5 : 1.0) * sp;
  if (tied) y += away * beyond_tie * sp;
  const StaffHead& by = chord.up ? chord.heads.front() : chord.heads.back();
  if (by.note->head == score::HeadKind::ghost) y += away * past_parenthesis * sp;
  if (any(&score::Note::staccato)) {
    add_staccato(layer, sp, y);
    y += away * sp;
  }
  if (any(&score::Note::tenuto)) {
    add_tenuto(layer, sp, y);
    y += away * sp;
  }
  if (!any(&score::Note::accent)) return;
  const double edge = away > 0 ? (staff_height + accent_beyond) * sp : -accent_beyond * sp;
  y = away > 0 ? std::max(y + 0.2 * sp, edge) : std::min(y - 0.2 * sp, edge);
  add_accent(layer, sp, y);
}

namespace {

double strokes_from(const StaffChord& chord) {
  const auto marked = [](const StaffHead& head) { return head.note->accidental.has_value(); };
  return !chord.up && std::any_of(chord.heads.begin(), chord.heads.end(), marked) ? tremolo_past : tremolo_from;
}

}  // namespace

double tremolo_room(const Context& context, const score::Event& event, const StaffChord& chord) {
  if (context.staves.slash || !context.in_tremolo(event)) return 0;
  return strokes_from(chord) + 2 * tremolo_reach(context, event) / context.space + 0.2;
}

void add_note_tremolo(Layer& layer, const Context& context, const score::Event& event, const StaffChord& chord,
                      const std::optional<NoteStem>& stem) {
  if (context.staves.slash || !context.in_tremolo(event)) return;
  const double sp = context.space;
  const int toward = chord.up ? -1 : 1;  // from the head to the tip
  const double head = step_y(context, chord.near_tip());
  const double least = head + toward * (strokes_from(chord) * sp + tremolo_reach(context, event));
  double x = 0;
  double y = least;
  if (stem) {
    // Midway between what hangs from the tip and the head.
    const double beams = event.beamed() ? proportion::beam + proportion::beam_step * (event.value.beams() - 1) : 0;
    const double middle = (stem->tip - toward * beams * sp + head + toward * 0.5 * sp) / 2;
    x = stem->x;
    const bool flagged = event.value.beams() > 0 && !event.beamed();
    if (!flagged) y = toward < 0 ? std::min(least, middle) : std::max(least, middle);
  }
  layer.add(tremolo_sign(context, event, {x, y}));
}

}  // namespace fretsheaf::layout
