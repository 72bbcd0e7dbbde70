#include "fretboard/fingering_shapes.h"

#include <algorithm>
#include <cstdlib>

#include "fretboard/fingering_weights.h"
#include "fretboard/fingers.h"

namespace fretsheaf::fretboard {

namespace {

constexpr const FingeringWeights& weights = fingering_weights;

constexpr int fingers_of_a_hand = 4;

// How many strings down the tab and frets up the neck a note has moved from its original.
struct Move {
  int strings = 0;
  int frets = 0;

  bool operator==(const Move&) const = default;
};

std::optional<Move> move_of(const Slot& slot, Place place, const Neck& neck) {
  if (!slot.note->original) return std::nullopt;
  const Place original = *slot.note->original;
  return Move{place.string - original.string, neck.level(place) - neck.level(original)};
}

// What a struck note costs by itself.
std::int64_t note_cost(const Slot& slot, Place place, const Neck& neck) {
  const std::optional<Place>& original = slot.note->original;
  std::int64_t cost = original && original->string != place.string ? weights.other_string : 0;
  if (slot.dead()) return cost;
  if (slot.note->sound == Sound::harmonic) {
    constexpr int octave = 12;
    const int above = slot.note->midi - neck.midi({place.string, 0}) - octave;
    cost += std::int64_t{weights.faint_harmonic} * above;
  }
  if (original && (original->fret == 0) != (place.fret == 0)) cost += weights.other_openness;
  const int low = original ? neck.level(*original) : neck.nut(place.string);
  return cost + std::int64_t{weights.height} * std::max(0, neck.level(place) - low);
}

// The string of a dead note that goes with that neighbour.
int string_beside(const Slot& dead, const Slot& neighbour, Place place, const Neck& neck) {
  if (dead.note->fixed) return dead.note->fixed->string;
  if (!dead.note->original) return place.string;
  const std::optional<Move> move = move_of(neighbour, place, neck);
  return dead.note->original->string + (move ? move->strings : 0);
}

// The string nearest to that one for the first dead note of a step of them, so that all stay on the neck.
int dead_string_within(const Step& step, int string, const Neck& neck) {
  const std::optional<Place>& first = step.slots[static_cast<std::size_t>(step.dead_alone)].note->original;
  int up = 0;  // how far others lie above the first, and below
  int down = 0;
  for (const Slot& slot : step.slots) {
    if (slot.carried || !slot.note->original || !first) continue;
    up = std::max(up, first->string - slot.note->original->string);
    down = std::max(down, slot.note->original->string - first->string);
  }
  return std::max(1 + up, std::min(string, neck.strings() - down));
}

// The free string nearest to that one, of two the lower line; 0 where none is free.
int nearest_free(unsigned used, int string, const Neck& neck) {
  int best = 0;
  for (int other = neck.strings(); other >= 1; --other) {
    if ((used >> static_cast<unsigned>(other) & 1U) != 0) continue;
    if (best == 0 || std::abs(other - string) < std::abs(best - string)) best = other;
  }
  return best;
}

class ShapeMaker {
 public:
  ShapeMaker(const Step& step, std::size_t count, const Board& board, Reach reach)
      : step_(step), count_(count), board_(board), spots_(count) {
    result_.slots = count;
    read_original();
    if (reach == Reach::any) most_ = kept_ = board.micrometres.back();
  }

  Shapes run() {
    place(0, {});
    return std::move(result_);
  }

 private:
  // What is stopped, and the strings that are taken.
  struct Hold {
    int low = 0;
    int high = 0;
    unsigned strings = 0;
  };

  bool goes_with_step(const Slot& slot) const { return slot.dead() && !slot.carried; }

  // How far the original reached, and how many fingers it took.
  void read_original() {
    Hold hold;
    std::vector<Place> places;
    bool whole = true;
    for (const Slot& slot : step_.slots) {
      if (slot.carried || slot.dead()) continue;
      if (!slot.note->original) {
        whole = false;
        continue;
      }
      const Place place = *slot.note->original;
      places.push_back(place);
      const int fret = std::min(place.fret, board_.last_hand());
      hold = with(hold, {place, 0, 0, fret, fret});
    }
    if (whole) kept_ = kept_reach(hold.high == 0 ? 0 : board_.span(hold.low, hold.high));
    if (places.size() > fingers_of_a_hand) fingers_ = std::max(fingers_of_a_hand, fingers_needed(places));
  }

  static Hold with(Hold hold, const Spot& spot) {
    if (spot.low > 0) hold.low = hold.low == 0 ? spot.low : std::min(hold.low, spot.low);
    hold.high = std::max(hold.high, spot.high);
    hold.strings |= 1U << static_cast<unsigned>(spot.place.string);
    return hold;
  }

  // Tries every spot of every slot that has a pitch or is carried.
  void place(std::size_t at, Hold hold) {
    while (at < count_ && goes_with_step(step_.slots[at])) ++at;
    if (at == count_) {
      finish(hold);
      return;
    }
    for (const Spot& spot : step_.slots[at].spots) {
      const Hold now = with(hold, spot);
      if (now.strings == hold.strings || (now.high > 0 && board_.span(now.low, now.high) > kept_)) continue;
      spots_[at] = spot;
      place(at + 1, now);
    }
  }

  void finish(Hold hold) {
    Shape shape{hold.low, hold.high};
    if (shape.free()) {
      shape.highest_hand = board_.last_hand();
    } else {
      const int reach = kept_ > most_ && !keeps_shape() ? most_ : kept_;
      if (board_.span(hold.low, hold.high) > reach) return;
      shape.highest_hand = shape.lowest_hand = hold.low;
      while (shape.lowest_hand > 1 && board_.span(shape.lowest_hand - 1, hold.high) <= reach) --shape.lowest_hand;
    }
    const bool partial = count_ < step_.slots.size();  // added only to know that there is one
    if (!partial && step_.dead_alone >= 0) {
      add_with_dead_alone(shape, hold.strings);
    } else if (partial || place_dead(hold.strings)) {
      add(shape);
    }
  }

  // Whether all lies as in the original, shifted.
  bool keeps_shape() const {
    std::optional<Move> common;
    for (std::size_t index = 0; index < count_; ++index) {
      const Slot& slot = step_.slots[index];
      if (slot.carried || slot.dead()) continue;
      const std::optional<Move> move = move_of(slot, spots_[index].place, board_.neck);
      if (common && move != common) return false;
      common = move;
    }
    return true;
  }

  // Dead notes among others.
  bool place_dead(unsigned used) {
    for (std::size_t index = 0; index < count_; ++index) {
      const Slot& slot = step_.slots[index];
      if (!goes_with_step(slot)) continue;
      const auto neighbour = static_cast<std::size_t>(slot.neighbour_slot);
      const int wanted = string_beside(slot, step_.slots[neighbour], spots_[neighbour].place, board_.neck);
      if (!put_dead(index, wanted, used)) return false;
    }
    return true;
  }

  // Dead notes alone: one shape for each string where their first may come to lie.
  void add_with_dead_alone(const Shape& shape, unsigned carried) {
    const Slot& first = step_.slots[static_cast<std::size_t>(step_.dead_alone)];
    const int strings = board_.neck.strings();
    const int was = first.note->original ? first.note->original->string : strings;
    const int stays = nearest_free(carried, dead_string_within(step_, was, board_.neck), board_.neck);
    for (int string = strings; string >= 1; --string) {
      if (first.neighbour == Neighbour::none && string != stays) continue;
      if ((carried >> static_cast<unsigned>(string) & 1U) != 0) continue;
      unsigned used = carried;
      bool all = true;
      for (std::size_t index = 0; index < count_; ++index) {
        const Slot& slot = step_.slots[index];
        if (!goes_with_step(slot)) continue;
        const bool known = slot.note->original && first.note->original;
        const int wanted = string + (known ? slot.note->original->string - first.note->original->string : 0);
        all = all && put_dead(index, wanted, used);
      }
      if (all) add(shape);
    }
  }

  bool put_dead(std::size_t index, int wanted, unsigned& used) {
    const int string = nearest_free(used, wanted, board_.neck);
    spots_[index] = {{string, 0}};
    used |= 1U << static_cast<unsigned>(string);
    return string != 0;
  }

  void add(Shape shape) {
    shape.cost = cost();
    result_.shapes.push_back(shape);
    result_.spots.insert(result_.spots.end(), spots_.begin(), spots_.end());
  }

  std::int64_t cost() {
    std::int64_t cost = 0;
    std::size_t before = count_;
    places_.clear();
    for (std::size_t index = 0; index < count_; ++index) {
      const Slot& slot = step_.slots[index];
      const Place place = spots_[index].place;
      if (!slot.carried && !slot.dead()) places_.push_back(place);
      if (!slot.struck()) continue;
      cost += note_cost(slot, place, board_.neck);
      if (before < count_) {
        cost += distance_cost(step_.slots[before], spots_[before].place, slot, place, board_.neck);
      }
      before = index;
    }
    if (places_.size() <= fingers_of_a_hand) return cost;
    return cost + std::int64_t{weights.finger_too_many} * std::max(0, fingers_needed(places_) - fingers_);
  }

  const Step& step_;
  std::size_t count_;
  const Board& board_;
  std::vector<Spot> spots_;
  std::vector<Place> places_;
  int most_ = most_micrometres;
  int kept_ = most_micrometres;      // for a shape that lies as in the original
  int fingers_ = fingers_of_a_hand;  // that a shape may take
  Shapes result_;
};

}  // namespace

Shapes make_shapes(const Step& step, std::size_t count, const Board& board, Reach reach) {
  return ShapeMaker(step, count, board, reach).run();
}

Shapes make_shapes(const Step& step, const Board& board, Reach reach) {
  return make_shapes(step, step.slots.size(), board, reach);
}

std::int64_t distance_cost(const Slot& first, Place first_place, const Slot& second, Place second_place,
                           const Neck& neck) {
  const std::optional<Move> one = move_of(first, first_place, neck);
  const std::optional<Move> other = move_of(second, second_place, neck);
  if (!one || !other) return 0;
  const bool frets = !first.dead() && !second.dead();
  return one->strings == other->strings && (!frets || one->frets == other->frets) ? 0 : weights.other_distance;
}

bool goes_with(const Step& dead, Spots dead_spots, const Slot& neighbour, Place place, const Neck& neck) {
  const auto first = static_cast<std::size_t>(dead.dead_alone);
  unsigned carried = 0;
  for (std::size_t index = 0; index < dead.slots.size(); ++index) {
    if (dead.slots[index].carried) carried |= 1U << static_cast<unsigned>(dead_spots[index].place.string);
  }
  const int string = dead_string_within(dead, string_beside(dead.slots[first], neighbour, place, neck), neck);
  return dead_spots[first].place.string == nearest_free(carried, string, neck);
}

std::int64_t strain(const Board& board, const Shape& shape, int hand) {
  if (shape.free()) return 0;
  const int over = std::max(0, board.span(hand, shape.high) - easy_micrometres);
  const int frets = std::max(0, shape.high - hand - (fingers_of_a_hand - 1));
  const std::int64_t stretched = std::int64_t{weights.stretch} * (over / 1000);
  return stretched + std::int64_t{weights.beyond_four_frets} * frets;
}

}  // namespace fretsheaf::fretboard
