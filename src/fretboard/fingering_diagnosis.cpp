#include "fretboard/fingering_diagnosis.h"

#include <algorithm>
#include <cstdlib>

#include "fretboard/places.h"

namespace fretsheaf::fretboard {

namespace {

// Why a note has no place even by itself.
Unplayable reason(const NoteToPlace& note, const Neck& neck) {
  if (note.sound == Sound::harmonic) {
    return harmonic_places_of(neck, note.midi).empty() ? Unplayable::no_harmonic : Unplayable::not_on_one_string;
  }
  if (!places_of(neck, note.midi).empty()) {
    return note.graces.empty() ? Unplayable::nowhere : Unplayable::not_on_one_string;
  }
  if (note.midi < lowest_midi(neck)) return Unplayable::too_low;
  return note.midi > highest_midi(neck) ? Unplayable::too_high : Unplayable::nowhere;
}

// A span in micrometres that some place of the notes has; none where they have no place.
using Span = std::optional<int>;

void take_less(Span& span, int other) {
  if (!span || other < *span) span = other;
}

void report(NoteIndex note, Unplayable without, Span span, std::vector<UnplayableNote>& unplayable) {
  if (span) {
    unplayable.push_back({note, Unplayable::out_of_reach, *span / 1000.0});
  } else {
    unplayable.push_back({note, without, 0});
  }
}

// Where the slot's joint could lead if only a hand reached so far.
Span joined_span(std::size_t index, const Layer& from, const Step& to, const Layer& to_layer, const Board& board) {
  Span span;
  const Slot& slot = to.slots[index];
  for (std::size_t a = 0; a < from.shapes().size(); ++a) {
    const Place before = from.shapes().spots_of(a)[static_cast<std::size_t>(slot.from)].place;
    for (std::size_t b = 0; b < to_layer.shapes().size(); ++b) {
      const Spot& spot = to_layer.shapes().spots_of(b)[index];
      if (!leads(slot, before, spot, board, Reach::any)) continue;
      const auto [low, high] = std::minmax(before.fret, spot.first_fret);
      take_less(span, is_ligature(slot.joint) && low > 0 ? board.span(low, high) : 0);
    }
  }
  return span;
}

// How far apart all lies where what is held on stays where it was.
Span holding_span(const Step& from, const Layer& from_layer, const Step& to, const Board& board) {
  Span span;
  const Shapes shapes = make_shapes(to, board, Reach::any);
  for (std::size_t b = 0; b < shapes.size(); ++b) {
    for (std::size_t a = 0; a < from_layer.shapes().size(); ++a) {
      const Passage pass = passage(from, from_layer.shapes().spots_of(a), to, shapes.spots_of(b), board);
      if (pass.cost < no_way) take_less(span, board.span(shapes.shapes[b].low, shapes.shapes[b].high));
    }
  }
  return span;
}

}  // namespace

void diagnose_step(const Step& step, const Board& board, std::vector<UnplayableNote>& unplayable) {
  const std::size_t known = unplayable.size();
  for (const Slot& slot : step.slots) {
    if (slot.carried || !slot.spots.empty()) continue;
    unplayable.push_back({slot.index, reason(*slot.note, board.neck), 0});
  }
  if (unplayable.size() > known) return;
  std::size_t count = 1;
  while (count < step.slots.size() && !make_shapes(step, count, board, Reach::of_a_hand).empty()) ++count;
  Span span;
  for (const Shape& shape : make_shapes(step, count, board, Reach::any).shapes) {
    take_less(span, board.span(shape.low, shape.high));
  }
  report(step.slots[count - 1].index, Unplayable::no_free_string, span, unplayable);
}

void diagnose_passage(const Step& from, const Layer& from_layer, const Step& to, const Layer& to_layer,
                      const Board& board, std::vector<UnplayableNote>& unplayable) {
  bool any_held = false;
  for (std::size_t index = 0; index < to.slots.size(); ++index) {
    const Slot& slot = to.slots[index];
    any_held = any_held || (slot.from >= 0 && slot.joint == Joint::held);
    if (slot.from < 0 || slot.joint == Joint::held) continue;
    const Span span = joined_span(index, from_layer, to, to_layer, board);
    if (span && *span <= slot.ligature_reach) continue;
    const Unplayable why = span ? Unplayable::joint_too_wide : Unplayable::not_on_one_string;
    unplayable.push_back({slot.index, why, span.value_or(0) / 1000.0});
    return;
  }
  // Each joint leads somewhere by itself: together, or beside what is held on, they do not.
  const auto struck = std::ranges::find_if(to.slots, [](const Slot& slot) { return slot.struck(); });
  const NoteIndex note = struck == to.slots.end() ? to.slots.front().index : struck->index;
  if (any_held) {
    report(note, Unplayable::no_free_string, holding_span(from, from_layer, to, board), unplayable);
  } else {
    unplayable.push_back({note, Unplayable::not_on_one_string, 0});
  }
}

}  // namespace fretsheaf::fretboard
