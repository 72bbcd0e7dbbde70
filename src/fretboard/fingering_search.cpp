#include "fretboard/fingering_search.h"

#include <algorithm>
#include <cstdlib>

#include "fretboard/fingering_weights.h"
#include "fretboard/places.h"

namespace fretsheaf::fretboard {

namespace {

constexpr const FingeringWeights& weights = fingering_weights;

// A cost for every fret where the hand may lie, from 0 (never used) up.
using ByHand = std::vector<std::int64_t>;

bool is_slide(Joint joint) {
  return joint == Joint::slide_up || joint == Joint::slide_down;
}

const std::optional<Place>& first_original(const NoteToPlace& note) {
  return note.graces.empty() ? note.original : note.graces.front().original;
}

// What is played first of a note and its grace notes.
Place first_place(const Slot& slot, Place place, const Neck& neck) {
  if (slot.carried || slot.note->graces.empty()) return place;
  return {place.string, fret_of(neck, place.string, slot.note->graces.front().midi).value_or(place.fret)};
}

bool allows(const Slot& before, Place from, const Slot& slot, Place place, const Neck& neck) {
  const Place to = first_place(slot, place, neck);
  if (slot.joint != Joint::held && (before.dead() || slot.dead())) return from.string == to.string;
  const std::optional<Place>& old_from = before.note->original;
  const std::optional<Place>& old_to = first_original(*slot.note);
  return joins(slot.joint, from, to, (old_from && old_from->fret == 0) || (old_to && old_to->fret == 0));
}

// How far slides lead on the way to a note, through its grace notes.
int slide_frets(const Slot& slot, Place place, const Neck& neck) {
  if (slot.carried) return 0;
  int frets = 0;
  int before = 0;
  bool first = true;
  for (const GraceToPlace& grace : slot.note->graces) {
    const int fret = fret_of(neck, place.string, grace.midi).value_or(0);
    if (!first && is_slide(grace.joint)) frets += fret - before;
    before = fret;
    first = false;
  }
  if (!first && is_slide(slot.note->joint)) frets += place.fret - before;
  return frets;
}

// The slots whose places decide on a passage; shapes that agree in them are one to it.
struct KeySlots {
  std::vector<std::size_t> from;
  std::vector<std::size_t> to;
};

KeySlots key_slots(const Step& from, const Step& to) {
  KeySlots keys;
  const auto add = [](std::vector<std::size_t>& slots, int slot) {
    const auto index = static_cast<std::size_t>(slot);
    if (std::ranges::find(slots, index) == slots.end()) slots.push_back(index);
  };
  add(keys.from, from.anchor);
  add(keys.to, to.anchor);
  for (std::size_t index = 0; index < to.slots.size(); ++index) {
    const Slot& slot = to.slots[index];
    if (slot.from >= 0) add(keys.from, slot.from);
    if (slot.from >= 0 || !slot.note->graces.empty()) add(keys.to, static_cast<int>(index));
  }
  if (goes_with(to, Neighbour::step_before)) {
    add(keys.to, to.dead_alone);
    add(keys.from, to.slots[static_cast<std::size_t>(to.dead_alone)].neighbour_slot);
  }
  if (goes_with(from, Neighbour::step_after)) {
    add(keys.from, from.dead_alone);
    add(keys.to, from.slots[static_cast<std::size_t>(from.dead_alone)].neighbour_slot);
  }
  return keys;
}

// Shapes in groups that are one to a passage.
struct Groups {
  std::vector<std::size_t> first;     // a shape of each group
  std::vector<std::size_t> of_shape;  // the group of each shape
};

Groups group(const Shapes& shapes, const std::vector<std::size_t>& slots) {
  Groups groups;
  for (std::size_t shape = 0; shape < shapes.shapes.size(); ++shape) {
    const auto places = shapes.places_of(shape);
    const auto same = [&](std::size_t other) {
      const auto others = shapes.places_of(other);
      return std::ranges::all_of(slots, [&](std::size_t slot) { return places[slot] == others[slot]; });
    };
    const auto found = std::ranges::find_if(groups.first, same);
    groups.of_shape.push_back(static_cast<std::size_t>(found - groups.first.begin()));
    if (found == groups.first.end()) groups.first.push_back(shape);
  }
  return groups;
}

int millimetres(const FretRule& rule, int hand) {
  return (rule.micrometres[static_cast<std::size_t>(hand)] + 500) / 1000;
}

std::int64_t travel_per_mm(const Step& from, bool free) {
  return std::int64_t{weights.travel} * (free ? from.urgency_free : from.urgency_stopped);
}

// The cheapest way to have the hand at each fret, from where it costs that much: travel is a sum along the neck, so one
// sweep up and one down see every way.
void move_hand(ByHand& costs, const FretRule& rule, std::int64_t per_mm) {
  ByHand moved = costs;
  const auto step = [&](std::size_t hand, std::size_t before) {
    const int mm = std::abs(millimetres(rule, static_cast<int>(hand)) - millimetres(rule, static_cast<int>(before)));
    moved[hand] = std::min(moved[hand], moved[before] + per_mm * mm);
  };
  for (std::size_t hand = 2; hand < moved.size(); ++hand) step(hand, hand - 1);
  for (std::size_t hand = moved.size() - 1; hand-- > 1;) step(hand, hand + 1);
  for (std::size_t hand = 1; hand < moved.size(); ++hand)
    costs[hand] = std::min(costs[hand], moved[hand] + weights.shift);
}

// For each group of shapes that are left: what it costs until the hand has moved.
std::vector<ByHand> left_costs(const Step& step, const Layer& layer, const Groups& groups, const FretRule& rule) {
  const ByHand none(static_cast<std::size_t>(rule.last_hand()) + 1, no_way);
  std::vector<ByHand> stopped(groups.first.size(), none);
  std::vector<ByHand> free(groups.first.size(), none);
  for (std::size_t index = 0; index < layer.shapes.shapes.size(); ++index) {
    const Shape& shape = layer.shapes.shapes[index];
    ByHand& costs = (shape.free() ? free : stopped)[groups.of_shape[index]];
    for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
      std::int64_t& cost = costs[static_cast<std::size_t>(hand)];
      cost = std::min(cost, layer.cost(index, hand));
    }
  }
  for (std::size_t index = 0; index < stopped.size(); ++index) {
    move_hand(stopped[index], rule, travel_per_mm(step, false));
    move_hand(free[index], rule, travel_per_mm(step, true));
    std::ranges::transform(stopped[index], free[index], stopped[index].begin(),
                           [](auto a, auto b) { return std::min(a, b); });
  }
  return stopped;
}

Layer empty_layer(Shapes shapes) {
  Layer layer;
  std::size_t size = 0;
  for (Shape& shape : shapes.shapes) {
    shape.costs_at = size;
    size += static_cast<std::size_t>(shape.hands());
  }
  layer.costs.assign(size, no_way);
  layer.shapes = std::move(shapes);
  return layer;
}

}  // namespace

bool goes_with(const Step& step, Neighbour neighbour) {
  return step.dead_alone >= 0 && step.slots[static_cast<std::size_t>(step.dead_alone)].neighbour == neighbour;
}

Passage passage(const Step& from, std::span<const Place> from_places, const Step& to, std::span<const Place> to_places,
                const Neck& neck) {
  Passage result;
  for (std::size_t index = 0; index < to.slots.size(); ++index) {
    const Slot& slot = to.slots[index];
    int slide = slide_frets(slot, to_places[index], neck);
    if (slot.from >= 0) {
      const auto before = static_cast<std::size_t>(slot.from);
      if (!allows(from.slots[before], from_places[before], slot, to_places[index], neck)) return {no_way};
      if (is_slide(slot.joint)) slide += first_place(slot, to_places[index], neck).fret - from_places[before].fret;
    }
    if (result.slide == 0) result.slide = slide;
  }
  const auto follows = [&](const Step& dead, std::span<const Place> dead_places, const Step& other,
                           std::span<const Place> places) {
    const auto slot = static_cast<std::size_t>(dead.dead_alone);
    const auto neighbour = static_cast<std::size_t>(dead.slots[slot].neighbour_slot);
    return dead_places[slot].string == dead_string(dead, other.slots[neighbour], places[neighbour], neck);
  };
  if (goes_with(to, Neighbour::step_before) && !follows(to, to_places, from, from_places)) return {no_way};
  if (goes_with(from, Neighbour::step_after) && !follows(from, from_places, to, to_places)) return {no_way};
  const auto a = static_cast<std::size_t>(from.anchor);
  const auto b = static_cast<std::size_t>(to.anchor);
  result.cost = distance_cost(from.slots[a], from_places[a], to.slots[b], to_places[b]) +
                std::int64_t{weights.string_change} * std::abs(from_places[a].string - to_places[b].string);
  return result;
}

std::int64_t travel(const FretRule& rule, const Step& from, bool free, int hand, int next_hand) {
  if (hand == next_hand) return 0;
  return weights.shift + travel_per_mm(from, free) * std::abs(millimetres(rule, hand) - millimetres(rule, next_hand));
}

int hand_before_slide(const FretRule& rule, int hand, int slide) {
  return std::clamp(hand - slide, 1, rule.last_hand());
}

bool Layer::reached() const {
  return std::ranges::any_of(costs, [](std::int64_t cost) { return cost < no_way; });
}

Layer next_layer(const Step& from_step, const Layer& from, const Step& step, Shapes shapes, const Neck& neck,
                 const FretRule& rule) {
  const KeySlots keys = key_slots(from_step, step);
  const Groups out = group(from.shapes, keys.from);
  const Groups in = group(shapes, keys.to);
  const std::vector<ByHand> left = left_costs(from_step, from, out, rule);
  std::vector<ByHand> entered(in.first.size(), ByHand(static_cast<std::size_t>(rule.last_hand()) + 1, no_way));
  for (std::size_t i = 0; i < in.first.size(); ++i) {
    for (std::size_t o = 0; o < out.first.size(); ++o) {
      const Passage pass =
          passage(from_step, from.shapes.places_of(out.first[o]), step, shapes.places_of(in.first[i]), neck);
      if (pass.cost >= no_way) continue;
      for (int hand = 1; hand <= rule.last_hand(); ++hand) {
        const auto before = static_cast<std::size_t>(hand_before_slide(rule, hand, pass.slide));
        std::int64_t& cost = entered[i][static_cast<std::size_t>(hand)];
        cost = std::min(cost, left[o][before] + pass.cost);
      }
    }
  }
  Layer layer = empty_layer(std::move(shapes));
  layer.begins = false;
  for (std::size_t index = 0; index < layer.shapes.shapes.size(); ++index) {
    const Shape& shape = layer.shapes.shapes[index];
    for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
      const std::int64_t cost = entered[in.of_shape[index]][static_cast<std::size_t>(hand)];
      if (cost >= no_way) continue;
      layer.costs[shape.costs_at + static_cast<std::size_t>(hand - shape.lowest_hand)] =
          cost + shape.cost + strain(rule, shape, hand);
    }
  }
  return layer;
}

Layer first_layer(Shapes shapes, const FretRule& rule) {
  Layer layer = empty_layer(std::move(shapes));
  for (const Shape& shape : layer.shapes.shapes) {
    for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
      layer.costs[shape.costs_at + static_cast<std::size_t>(hand - shape.lowest_hand)] =
          shape.cost + strain(rule, shape, hand);
    }
  }
  return layer;
}

}  // namespace fretsheaf::fretboard
