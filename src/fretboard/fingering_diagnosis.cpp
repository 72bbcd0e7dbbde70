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
  int lowest = neck.midi({1, 0});
  int highest = lowest;
  for (int string = 1; string <= neck.strings(); ++string) {
    const int last = neck.last_fret();
    lowest = std::min(lowest, neck.midi({string, 0}));
    highest = std::max({highest, neck.midi({string, 0}), neck.has({string, last}) ? neck.midi({string, last}) : 0});
  }
  return note.midi < lowest ? Unplayable::too_low : note.midi > highest ? Unplayable::too_high : Unplayable::nowhere;
}

double least_span(const Shapes& shapes, const FretRule& rule) {
  int least = 0;
  for (const Shape& shape : shapes.shapes) {
    const int span = rule.span(shape.low, shape.high);
    if (&shape == shapes.shapes.data() || span < least) least = span;
  }
  return least / 1000.0;
}

}  // namespace

void diagnose_step(const Step& step, const Neck& neck, const FretRule& rule, std::vector<UnplayableNote>& unplayable) {
  const std::size_t known = unplayable.size();
  for (const Slot& slot : step.slots) {
    if (slot.carried || !slot.candidates.empty()) continue;
    unplayable.push_back({slot.index, reason(*slot.note, neck), 0});
  }
  if (unplayable.size() > known) return;
  for (std::size_t count = 1; count <= step.slots.size(); ++count) {
    if (!make_shapes(step, count, neck, rule, false).shapes.empty()) continue;
    const Shapes any = make_shapes(step, count, neck, rule, true);
    const NoteIndex note = step.slots[count - 1].index;
    if (any.shapes.empty()) {
      unplayable.push_back({note, Unplayable::no_free_string, 0});
    } else {
      unplayable.push_back({note, Unplayable::out_of_reach, least_span(any, rule)});
    }
    return;
  }
}

void diagnose_passage(const Step& from, const Layer& layer, const Step& to, const Neck& neck, const FretRule& rule,
                      std::vector<UnplayableNote>& unplayable) {
  const auto joined =
      std::ranges::find_if(to.slots, [](const Slot& slot) { return slot.from >= 0 && slot.joint != Joint::held; });
  if (joined != to.slots.end()) {
    unplayable.push_back({joined->index, Unplayable::not_on_one_string, 0});
    return;
  }
  // What is held on leaves no place for the rest.
  Shapes any = make_shapes(to, to.slots.size(), neck, rule, true);
  Shapes holding;
  holding.slots = any.slots;
  for (std::size_t shape = 0; shape < any.shapes.size(); ++shape) {
    for (std::size_t before = 0; before < layer.shapes.shapes.size(); ++before) {
      const Passage pass = passage(from, layer.shapes.places_of(before), to, any.places_of(shape), neck);
      if (pass.cost < no_way) holding.shapes.push_back(any.shapes[shape]);
    }
  }
  const auto struck = std::ranges::find_if(to.slots, [](const Slot& slot) { return slot.struck(); });
  const NoteIndex note = struck == to.slots.end() ? to.slots.front().index : struck->index;
  if (holding.shapes.empty()) {
    unplayable.push_back({note, Unplayable::no_free_string, 0});
  } else {
    unplayable.push_back({note, Unplayable::out_of_reach, least_span(holding, rule)});
  }
}

}  // namespace fretsheaf::fretboard
