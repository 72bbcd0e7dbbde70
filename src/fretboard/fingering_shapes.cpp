#include "fretboard/fingering_shapes.h"

#include <algorithm>
#include <cmath>

#include "fretboard/fingering_weights.h"
#include "fretboard/fingers.h"
#include "fretboard/reach.h"

namespace fretsheaf::fretboard {

namespace {

constexpr const FingeringWeights& weights = fingering_weights;

constexpr int micrometres(double millimetres) {
  return static_cast<int>(millimetres * 1000);
}

// A finger a fret.
constexpr int frets_of_a_hand = 4;

// How many strings down the tab and frets up the neck a note has moved from its original.
struct Move {
  int strings = 0;
  int frets = 0;

  bool operator==(const Move&) const = default;
};

std::optional<Move> move_of(const Slot& slot, Place place) {
  if (!slot.note->original) return std::nullopt;
  return Move{place.string - slot.note->original->string, place.fret - slot.note->original->fret};
}

// What a struck note costs by itself.
std::int64_t note_cost(const Slot& slot, Place place) {
  const std::optional<Place>& original = slot.note->original;
  std::int64_t cost = original && original->string != place.string ? weights.other_string : 0;
  if (slot.dead()) return cost;
  if (original && (original->fret == 0) != (place.fret == 0)) cost += weights.other_openness;
  return cost + std::int64_t{weights.height} * std::max(0, place.fret - (original ? original->fret : 0));
}

bool taken(std::span<const Place> places, int string) {
  return std::ranges::any_of(places, [&](Place place) { return place.string == string; });
}

// The free string nearest to that one, of two the lower line; 0 where none is free.
int nearest_free(std::span<const Place> places, int string, const Neck& neck) {
  int best = 0;
  for (int other = neck.strings(); other >= 1; --other) {
    if (taken(places, other)) continue;
    if (best == 0 || std::abs(other - string) < std::abs(best - string)) best = other;
  }
  return best;
}

// The string of a dead note that goes with that neighbour.
int string_beside(const Slot& dead, const Slot& neighbour, Place place) {
  if (!dead.note->original) return place.string;
  const std::optional<Move> move = move_of(neighbour, place);
  return dead.note->original->string + (move ? move->strings : 0);
}

// The string nearest to that one for the first dead note of a step of them, so that all stay on the neck.
int dead_string_within(const Step& step, int string, const Neck& neck) {
  int first = 0;
  int top = 0;
  int bottom = 0;
  for (const Slot& slot : step.slots) {
    if (slot.carried || !slot.note->original) continue;
    const int line = slot.note->original->string;
    if (first == 0) first = top = bottom = line;
    top = std::min(top, line);
    bottom = std::max(bottom, line);
  }
  return std::max(1 + first - top, std::min(string, neck.strings() + first - bottom));
}

class ShapeMaker {
 public:
  ShapeMaker(const Step& step, std::size_t count, const Neck& neck, const FretRule& rule, bool any_span)
      : step_(step), count_(count), neck_(neck), rule_(rule), any_span_(any_span), places_(count) {
    result_.slots = count;
    for (std::size_t index = 0; index < count; ++index) {
      (step.slots[index].dead() && !step.slots[index].carried ? dead_ : pitched_).push_back(index);
    }
    widest_ = any_span ? rule.span(0, rule.last_hand()) : widest();
  }

  Shapes run() {
    place(0, 0, 0, 0);
    return std::move(result_);
  }

 private:
  // What a hand may span at most in this step: the original's stretch and a tenth, where there is one.
  int widest() const { return std::max(micrometres(most_reach), lenient()); }

  int lenient() const {
    int low = 0;
    int high = 0;
    for (const Slot& slot : step_.slots) {
      if (slot.carried || slot.dead()) continue;
      if (!slot.note->original) return 0;
      const int fret = std::min(slot.note->original->fret, rule_.last_hand());
      if (fret == 0) continue;
      low = low == 0 ? fret : std::min(low, fret);
      high = std::max(high, fret);
    }
    return std::max(micrometres(most_reach), rule_.span(low, high)) / 10 * 11;
  }

  void place(std::size_t at, int low, int high, unsigned strings) {
    if (at == pitched_.size()) {
      finish(low, high);
      return;
    }
    const Slot& slot = step_.slots[pitched_[at]];
    for (const Candidate& candidate : slot.candidates) {
      const unsigned string = 1U << static_cast<unsigned>(candidate.place.string);
      if ((strings & string) != 0) continue;
      const int new_low = low == 0 || candidate.low == 0 ? std::max(low, candidate.low) : std::min(low, candidate.low);
      const int new_high = std::max(high, candidate.high);
      if (new_high > 0 && rule_.span(new_low, new_high) > widest_) continue;
      places_[pitched_[at]] = candidate.place;
      place(at + 1, new_low, new_high, strings | string);
    }
  }

  void finish(int low, int high) {
    Shape shape;
    shape.low = low;
    shape.high = high;
    const int reach = any_span_ || widest_ == micrometres(most_reach) ? widest_ : reach_of_shape();
    if (high > 0 && rule_.span(low, high) > reach) return;
    shape.highest_hand = high == 0 ? rule_.last_hand() : low;
    if (high > 0) {
      shape.lowest_hand = low;
      while (shape.lowest_hand > 1 && rule_.span(shape.lowest_hand - 1, high) <= reach) --shape.lowest_hand;
    }
    if (count_ < step_.slots.size() || dead_.empty()) {
      add(shape);
    } else if (step_.slots[dead_.front()].neighbour == Neighbour::same_step) {
      if (place_dead_among_pitched()) add(shape);
    } else {
      add_dead(shape);
    }
  }

  // The wider reach is for shapes that lie just as in the original.
  int reach_of_shape() const {
    std::optional<Move> common;
    for (const std::size_t index : pitched_) {
      const Slot& slot = step_.slots[index];
      if (slot.carried) continue;
      const std::optional<Move> move = move_of(slot, places_[index]);
      if (common && move != common) return micrometres(most_reach);
      common = move;
    }
    return widest_;
  }

  bool place_dead_among_pitched() {
    std::vector<Place> used;
    for (const std::size_t index : pitched_) used.push_back(places_[index]);
    return std::ranges::all_of(dead_, [&](std::size_t index) {
      const Slot& slot = step_.slots[index];
      const auto neighbour = static_cast<std::size_t>(slot.neighbour_slot);
      const int wanted = string_beside(slot, step_.slots[neighbour], places_[neighbour]);
      return place_dead(index, nearest_free(used, wanted, neck_), used);
    });
  }

  // A step of dead notes: one shape for each string where its first may come to lie.
  void add_dead(const Shape& shape) {
    const Slot& first = step_.slots[dead_.front()];
    const bool fixed = first.neighbour == Neighbour::none;
    const int alone =
        dead_string_within(step_, first.note->original ? first.note->original->string : neck_.strings(), neck_);
    for (int string = neck_.strings(); string >= 1; --string) {
      if ((fixed && string != alone) || dead_string_within(step_, string, neck_) != string) continue;
      std::vector<Place> used;
      const bool all = std::ranges::all_of(dead_, [&](std::size_t index) {
        const std::optional<Place>& original = step_.slots[index].note->original;
        const int wanted =
            original && first.note->original ? string + original->string - first.note->original->string : string;
        return place_dead(index, nearest_free(used, wanted, neck_), used);
      });
      if (all) add(shape);
    }
  }

  bool place_dead(std::size_t index, int string, std::vector<Place>& used) {
    places_[index] = {string, 0};
    used.push_back(places_[index]);
    return string != 0;
  }

  void add(Shape shape) {
    std::vector<Place> stopped;
    const Slot* before = nullptr;
    Place place_before;
    for (std::size_t index = 0; index < count_; ++index) {
      const Slot& slot = step_.slots[index];
      if (slot.carried) continue;
      if (!slot.dead()) stopped.push_back(places_[index]);
      if (!slot.struck()) continue;
      shape.cost += note_cost(slot, places_[index]);
      if (before != nullptr) shape.cost += distance_cost(*before, place_before, slot, places_[index]);
      before = &slot;
      place_before = places_[index];
    }
    shape.cost += std::int64_t{weights.finger_beyond_four} * std::max(0, fingers_needed(stopped) - 4);
    result_.shapes.push_back(shape);
    result_.places.insert(result_.places.end(), places_.begin(), places_.end());
  }

  const Step& step_;
  std::size_t count_;
  const Neck& neck_;
  const FretRule& rule_;
  bool any_span_;
  std::vector<Place> places_;
  std::vector<std::size_t> pitched_;  // carried ones too
  std::vector<std::size_t> dead_;
  int widest_ = 0;
  Shapes result_;
};

}  // namespace

FretRule::FretRule(const Neck& neck, double scale_length) {
  for (int fret = 0; fret <= std::max(1, neck.last_fret()); ++fret) {
    micrometres.push_back(static_cast<int>(std::lround(1000 * fret_position(neck, scale_length, fret))));
  }
}

Shapes make_shapes(const Step& step, std::size_t count, const Neck& neck, const FretRule& rule, bool any_span) {
  return ShapeMaker(step, count, neck, rule, any_span).run();
}

std::int64_t distance_cost(const Slot& first, Place first_place, const Slot& second, Place second_place) {
  const std::optional<Move> one = move_of(first, first_place);
  const std::optional<Move> other = move_of(second, second_place);
  if (!one || !other) return 0;
  const bool frets = !first.dead() && !second.dead();
  return one->strings == other->strings && (!frets || one->frets == other->frets) ? 0 : weights.other_distance;
}

int dead_string(const Step& step, const Slot& neighbour, Place neighbour_place, const Neck& neck) {
  const Slot& first = step.slots[static_cast<std::size_t>(step.dead_alone)];
  return dead_string_within(step, string_beside(first, neighbour, neighbour_place), neck);
}

std::int64_t strain(const FretRule& rule, const Shape& shape, int hand) {
  if (shape.free()) return 0;
  const int over = rule.span(hand, shape.high) - micrometres(easy_reach);
  const int frets = shape.high - hand - (frets_of_a_hand - 1);
  return std::int64_t{weights.stretch} * std::max(0, over / 1000) +
         std::int64_t{weights.beyond_four_frets} * std::max(0, frets);
}

}  // namespace fretsheaf::fretboard
