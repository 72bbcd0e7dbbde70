#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "fretboard/fingering_steps.h"

namespace fretsheaf::fretboard {

// Where frets lie, in whole micrometres from the neck's nut, so that sums and ties are exact. Index: fret from the
// capo.
struct FretRule {
  std::vector<int> micrometres;

  FretRule(const Neck& neck, double scale_length);
  int last_hand() const { return static_cast<int>(micrometres.size()) - 1; }
  int span(int low, int high) const {
    return micrometres[static_cast<std::size_t>(high)] - micrometres[static_cast<std::size_t>(low)];
  }
};

// Places for all slots of a step, and what they cost by themselves. The hand may lie at the frets lowest_hand to
// highest_hand: anywhere where nothing is stopped.
struct Shape {
  int low = 0;  // the outer stopped frets; 0 where nothing is
  int high = 0;
  int lowest_hand = 1;
  int highest_hand = 1;
  std::int64_t cost = 0;
  std::size_t costs_at = 0;  // where the search keeps what the way to it costs, one number a hand

  bool free() const { return high == 0; }
  int hands() const { return highest_hand - lowest_hand + 1; }
};

struct Shapes {
  std::size_t slots = 0;
  std::vector<Place> places;  // `slots` of them a shape
  std::vector<Shape> shapes;

  std::span<const Place> places_of(std::size_t shape) const { return std::span(places).subspan(shape * slots, slots); }
};

// All that the strings (and, unless `any_span`, a hand) allow, in a fixed order: the first slot's lowest fret first.
// Of the slots only the first `count` are placed.
Shapes make_shapes(const Step& step, std::size_t count, const Neck& neck, const FretRule& rule, bool any_span);

// What another distance than the original's between two places costs; the frets of a dead note say nothing.
std::int64_t distance_cost(const Slot& first, Place first_place, const Slot& second, Place second_place);

// Where a step of dead notes alone is played when its neighbour lies there: the string of the first.
int dead_string(const Step& step, const Slot& neighbour, Place neighbour_place, const Neck& neck);

// What it costs to hold a shape with the hand at that fret.
std::int64_t strain(const FretRule& rule, const Shape& shape, int hand);

}  // namespace fretsheaf::fretboard
