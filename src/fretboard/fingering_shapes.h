#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "fretboard/fingering_steps.h"

namespace fretsheaf::fretboard {

// Spots for all slots of a step, and what they cost by themselves. The hand may lie at the frets lowest_hand to
// highest_hand: anywhere where nothing is stopped.
struct Shape {
  int low = 0;  // the outer stopped frets; 0 where nothing is
  int high = 0;
  int lowest_hand = 1;
  int highest_hand = 1;
  std::int64_t cost = 0;

  bool free() const { return high == 0; }
};

using Spots = std::span<const Spot>;

struct Shapes {
  std::size_t slots = 0;
  std::vector<Spot> spots;  // `slots` of them a shape
  std::vector<Shape> shapes;

  bool empty() const { return shapes.empty(); }
  std::size_t size() const { return shapes.size(); }
  Spots spots_of(std::size_t shape) const { return Spots(spots).subspan(shape * slots, slots); }
};

enum class Reach { of_a_hand, any };

// All that the strings (and a hand) allow, in a fixed order: the first slot's lowest fret first. Only the first `count`
// slots are placed.
Shapes make_shapes(const Step& step, std::size_t count, const Board& board, Reach reach);
Shapes make_shapes(const Step& step, const Board& board, Reach reach);

// What another distance than the original's between two places costs; the frets of a dead note say nothing.
std::int64_t distance_cost(const Slot& first, Place first_place, const Slot& second, Place second_place,
                           const Neck& neck);

// Whether a step of dead notes alone lies as one does whose neighbour lies there.
bool goes_with(const Step& dead, Spots dead_spots, const Slot& neighbour, Place place, const Neck& neck);

// What it costs to hold a shape with the hand at that fret.
std::int64_t strain(const Board& board, const Shape& shape, int hand);

}  // namespace fretsheaf::fretboard
