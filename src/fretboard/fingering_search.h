#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "fretboard/fingering_shapes.h"

namespace fretsheaf::fretboard {

inline constexpr std::int64_t no_way = std::numeric_limits<std::int64_t>::max() / 4;

// What goes from one shape to the next, whatever the hand does.
struct Passage {
  std::int64_t cost = 0;  // no_way where it is not allowed
  int slide = 0;          // frets that a slide takes the hand along
};

Passage passage(const Step& from, std::span<const Place> from_places, const Step& to, std::span<const Place> to_places,
                const Neck& neck);

// Whether the step is of dead notes alone and takes its strings from there.
bool goes_with(const Step& step, Neighbour neighbour);

// What it costs to move the hand between two frets after a step that was left in such a shape.
std::int64_t travel(const FretRule& rule, const Step& from, bool free, int hand, int next_hand);

// Where the hand was before a slide took it along, as near as the neck allows.
int hand_before_slide(const FretRule& rule, int hand, int slide);

// What the cheapest way to each shape and hand of a step costs.
struct Layer {
  Shapes shapes;
  std::vector<std::int64_t> costs;
  bool begins = true;  // there is no step before it, or no way from that

  std::int64_t cost(std::size_t shape, int hand) const {
    const Shape& of = shapes.shapes[shape];
    return costs[of.costs_at + static_cast<std::size_t>(hand - of.lowest_hand)];
  }
  bool reached() const;
};

// The layer after `from`. Its costs are no_way where nothing leads.
Layer next_layer(const Step& from_step, const Layer& from, const Step& step, Shapes shapes, const Neck& neck,
                 const FretRule& rule);
// A layer where the line begins.
Layer first_layer(Shapes shapes, const FretRule& rule);

}  // namespace fretsheaf::fretboard
