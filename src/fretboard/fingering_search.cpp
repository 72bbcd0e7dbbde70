#include "fretboard/fingering_search.h"

#include <algorithm>
#include <cstdlib>

#include "fretboard/fingering_weights.h"

namespace fretsheaf::fretboard {

namespace {

constexpr const FingeringWeights& weights = fingering_weights;

// Whether the step is of dead notes alone and takes its strings from there.
bool has_neighbour(const Step& step, Neighbour neighbour) {
  return step.dead_alone >= 0 && step.slots[static_cast<std::size_t>(step.dead_alone)].neighbour == neighbour;
}

// Whether such a step lies beside its neighbour.
bool follows(const Step& dead, Spots dead_spots, const Step& other, Spots spots, const Board& board) {
  const Slot& first = dead.slots[static_cast<std::size_t>(dead.dead_alone)];
  const auto neighbour = static_cast<std::size_t>(first.neighbour_slot);
  return goes_with(dead, dead_spots, other.slots[neighbour], spots[neighbour].place, board.neck);
}

std::int64_t travel_per_mm(const Step& from, bool free) {
  return std::int64_t{weights.travel} * (free ? from.urgency_free : from.urgency_stopped);
}

// The thumb waits at a short string: going there and back is no change.
int strings_between(Place one, Place other, const Neck& neck) {
  return neck.is_short(one.string) || neck.is_short(other.string) ? 0 : std::abs(one.string - other.string);
}

}  // namespace

bool leads(const Slot& slot, Place from, const Spot& to, const Board& board, Reach reach) {
  const Place place{to.place.string, to.first_fret};
  if (slot.string_alone) return from.string == place.string;
  if (!joins(slot.joint, from, place, slot.open_slide)) return false;
  if (!is_ligature(slot.joint) || from.fret == 0 || place.fret == 0 || reach == Reach::any) return true;
  return board.span(std::min(from.fret, place.fret), std::max(from.fret, place.fret)) <= slot.ligature_reach;
}

Passage passage(const Step& from, Spots from_spots, const Step& to, Spots to_spots, const Board& board) {
  Passage result;
  for (std::size_t index = 0; index < to.slots.size(); ++index) {
    const Slot& slot = to.slots[index];
    const Spot& spot = to_spots[index];
    int slide = spot.slide;
    if (slot.from >= 0) {
      const Place before = from_spots[static_cast<std::size_t>(slot.from)].place;
      if (!leads(slot, before, spot, board, Reach::of_a_hand)) return {no_way};
      if (is_slide(slot.joint)) slide += spot.first_fret - before.fret;
    }
    if (result.slide == 0) result.slide = slide;
  }
  if (has_neighbour(to, Neighbour::step_before) && !follows(to, to_spots, from, from_spots, board)) return {no_way};
  if (has_neighbour(from, Neighbour::step_after) && !follows(from, from_spots, to, to_spots, board)) return {no_way};
  const auto a = static_cast<std::size_t>(from.anchor);
  const auto b = static_cast<std::size_t>(to.anchor);
  const Place one = from_spots[a].place;
  const Place other = to_spots[b].place;
  result.cost = distance_cost(from.slots[a], one, to.slots[b], other, board.neck) +
                std::int64_t{weights.string_change} * strings_between(one, other, board.neck);
  return result;
}

std::int64_t travel(const Board& board, const Step& from, bool free, int hand, int next_hand) {
  if (hand == next_hand) return 0;
  const std::vector<int>& mm = board.millimetres;
  const int distance = std::abs(mm[static_cast<std::size_t>(hand)] - mm[static_cast<std::size_t>(next_hand)]);
  return travel_per_mm(from, free) * (weights.aim_millimetres + distance);
}

int hand_before_slide(const Board& board, int hand, int slide) {
  return std::clamp(hand - slide, 1, board.last_hand());
}

Layer::Layer(Shapes shapes) : shapes_(std::move(shapes)) {
  std::size_t size = 0;
  starts_.reserve(shapes_.size());
  for (const Shape& shape : shapes_.shapes) {
    starts_.push_back(size);
    size += static_cast<std::size_t>(shape.highest_hand - shape.lowest_hand + 1);
  }
  costs_.assign(size, no_way);
}

bool Layer::reached() const {
  return std::ranges::any_of(costs_, [](std::int64_t cost) { return cost < no_way; });
}

void begin(Layer& layer, const Board& board) {
  for (std::size_t index = 0; index < layer.shapes().size(); ++index) {
    const Shape& shape = layer.shapes().shapes[index];
    for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
      layer.set_cost(index, hand, shape.cost + strain(board, shape, hand));
    }
  }
}

void Search::advance(const Step& from_step, const Layer& from, const Step& to_step, Layer& to) {
  find_slots(from_step, to_step);
  group(out_, from.shapes());
  group(in_, to.shapes());
  leave(from_step, from);
  enter(from_step, from, to_step, to);
  for (std::size_t index = 0; index < to.shapes().size(); ++index) {
    const Shape& shape = to.shapes().shapes[index];
    const std::int64_t* const entered = entered_.data() + in_.of_shape[index] * hands();
    for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
      const std::int64_t cost = entered[hand];
      to.set_cost(index, hand, cost >= no_way ? no_way : cost + shape.cost + strain(board_, shape, hand));
    }
  }
}

void Search::find_slots(const Step& from, const Step& to) {
  out_.slots.clear();
  in_.slots.clear();
  const auto add = [](Groups& groups, int slot) {
    const auto index = static_cast<std::size_t>(slot);
    if (std::ranges::find(groups.slots, index) == groups.slots.end()) groups.slots.push_back(index);
  };
  add(out_, from.anchor);
  add(in_, to.anchor);
  for (std::size_t index = 0; index < to.slots.size(); ++index) {
    const Slot& slot = to.slots[index];
    if (slot.from >= 0) add(out_, slot.from);
    if (slot.from >= 0 || !slot.note->graces.empty()) add(in_, static_cast<int>(index));
  }
  for (std::size_t index = 0; from.dead_alone >= 0 && index < from.slots.size(); ++index) {
    if (from.slots[index].carried) add(out_, static_cast<int>(index));
  }
  if (has_neighbour(to, Neighbour::step_before)) {
    add(in_, to.dead_alone);
    add(out_, to.slots[static_cast<std::size_t>(to.dead_alone)].neighbour_slot);
  }
  if (has_neighbour(from, Neighbour::step_after)) {
    add(out_, from.dead_alone);
    add(in_, from.slots[static_cast<std::size_t>(from.dead_alone)].neighbour_slot);
  }
}

void Search::group(Groups& groups, const Shapes& shapes) {
  groups.first.clear();
  groups.of_shape.clear();
  for (std::size_t shape = 0; shape < shapes.size(); ++shape) {
    const Spots spots = shapes.spots_of(shape);
    const auto same = [&](std::size_t other) {
      if (shapes.shapes[shape].free() != shapes.shapes[other].free()) return false;
      const Spots others = shapes.spots_of(other);
      return std::ranges::all_of(groups.slots, [&](std::size_t slot) { return spots[slot] == others[slot]; });
    };
    const auto found = std::ranges::find_if(groups.first, same);
    groups.of_shape.push_back(static_cast<std::size_t>(found - groups.first.begin()));
    if (found == groups.first.end()) groups.first.push_back(shape);
  }
}

// For each group of shapes: what it costs to have left one of them and have moved the hand.
void Search::leave(const Step& step, const Layer& layer) {
  left_.assign(out_.first.size() * hands(), no_way);
  for (std::size_t index = 0; index < layer.shapes().size(); ++index) {
    const Shape& shape = layer.shapes().shapes[index];
    std::int64_t* const costs = left_.data() + out_.of_shape[index] * hands();
    for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
      costs[hand] = std::min(costs[hand], layer.cost(index, hand));
    }
  }
  for (std::size_t group = 0; group < out_.first.size(); ++group) {
    const bool free = layer.shapes().shapes[out_.first[group]].free();
    move_hand(left_.data() + group * hands(), travel_per_mm(step, free));
  }
}

// From what it costs to have the hand at each fret to what it costs when it has moved as well: travel is a sum along
// the neck, so that one sweep up and one down see every way.
void Search::move_hand(std::int64_t* costs, std::int64_t per_mm) const {
  const std::vector<int>& mm = board_.millimetres;
  const std::int64_t aim = per_mm * weights.aim_millimetres;
  std::int64_t moving = no_way;
  for (std::size_t hand = 1; hand < hands(); ++hand) {
    const std::int64_t here = costs[hand];
    moving += per_mm * (mm[hand] - mm[hand - 1]);
    costs[hand] = std::min(here, moving);
    moving = std::min(moving, here + aim);
  }
  moving = no_way;
  for (std::size_t hand = hands() - 1; hand >= 1; --hand) {
    const std::int64_t here = costs[hand];
    if (hand + 1 < hands()) moving += per_mm * (mm[hand + 1] - mm[hand]);
    costs[hand] = std::min(here, moving);
    moving = std::min(moving, here + aim);
  }
}

// For each group ahead: what it costs to have passed to it.
void Search::enter(const Step& from_step, const Layer& from, const Step& to_step, const Layer& to) {
  entered_.assign(in_.first.size() * hands(), no_way);
  for (std::size_t in = 0; in < in_.first.size(); ++in) {
    std::int64_t* const entered = entered_.data() + in * hands();
    const Spots spots = to.shapes().spots_of(in_.first[in]);
    for (std::size_t out = 0; out < out_.first.size(); ++out) {
      const Passage pass = passage(from_step, from.shapes().spots_of(out_.first[out]), to_step, spots, board_);
      if (pass.cost >= no_way) continue;
      const std::int64_t* const left = left_.data() + out * hands();
      for (int hand = 1; hand <= board_.last_hand(); ++hand) {
        const int before = pass.slide == 0 ? hand : hand_before_slide(board_, hand, pass.slide);
        entered[hand] = std::min(entered[hand], left[before] + pass.cost);
      }
    }
  }
}

}  // namespace fretsheaf::fretboard
