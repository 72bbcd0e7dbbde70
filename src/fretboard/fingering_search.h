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

Passage passage(const Step& from, Spots from_spots, const Step& to, Spots to_spots, const Board& board);

// Whether the slot's joint leads there from the spot that it comes from.
bool leads(const Slot& slot, Place from, const Spot& to, const Board& board, Reach reach);

// What it costs to move the hand between two frets after a step that was left in such a shape.
std::int64_t travel(const Board& board, const Step& from, bool free, int hand, int next_hand);

// Where the hand was before a slide took it along, as near as the neck allows.
int hand_before_slide(const Board& board, int hand, int slide);

// What the cheapest way to each shape and hand of a step costs.
class Layer {
 public:
  explicit Layer(Shapes shapes);

  const Shapes& shapes() const { return shapes_; }
  // REQUIRES: the hand is one of the shape's.
  std::int64_t cost(std::size_t shape, int hand) const { return costs_[index(shape, hand)]; }
  void set_cost(std::size_t shape, int hand, std::int64_t cost) { costs_[index(shape, hand)] = cost; }
  bool reached() const;

 private:
  std::size_t index(std::size_t shape, int hand) const {
    return starts_[shape] + static_cast<std::size_t>(hand - shapes_.shapes[shape].lowest_hand);
  }

  Shapes shapes_;
  std::vector<std::size_t> starts_;  // of each shape's costs
  std::vector<std::int64_t> costs_;  // a hand each
};

// Sets the costs of the layer where a line begins.
void begin(Layer& layer, const Board& board);

// Goes from layer to layer. Every way is looked at, in three parts that do not depend on each other: shapes that are
// one to a passage are taken together; the hand moves by two sweeps along the neck; each group then passes to each.
class Search {
 public:
  explicit Search(const Board& board) : board_(board) {}

  // Sets the costs of `to`: no_way where nothing leads.
  void advance(const Step& from_step, const Layer& from, const Step& to_step, Layer& to);

 private:
  // Shapes in groups that are one to a passage, and leave the hand equally free.
  struct Groups {
    std::vector<std::size_t> slots;     // those that a passage looks at
    std::vector<std::size_t> first;     // a shape of each group
    std::vector<std::size_t> of_shape;  // the group of each shape
  };

  void find_slots(const Step& from, const Step& to);
  static void group(Groups& groups, const Shapes& shapes);
  void leave(const Step& step, const Layer& layer);
  void move_hand(std::int64_t* costs, std::int64_t per_mm) const;
  void enter(const Step& from_step, const Layer& from, const Step& to_step, const Layer& to);

  std::size_t hands() const { return board_.micrometres.size(); }

  const Board& board_;
  Groups out_;
  Groups in_;
  // A cost for each group and each fret where the hand may lie, from 0 (never used) up.
  std::vector<std::int64_t> left_;     // behind
  std::vector<std::int64_t> entered_;  // ahead
};

}  // namespace fretsheaf::fretboard
