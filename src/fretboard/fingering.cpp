#include "fretboard/fingering.h"

#include <algorithm>

#include "fretboard/fingering_diagnosis.h"
#include "fretboard/fingering_search.h"
#include "fretboard/places.h"

namespace fretsheaf::fretboard {

namespace {

struct State {
  std::size_t shape = 0;
  int hand = 1;
};

class Finder {
 public:
  Finder(const Line& line, const Neck& neck, double scale_length)
      : line_(line), board_(neck, scale_length), steps_(make_steps(line, board_)), search_(board_) {}

  Fingering run() {
    layers_.reserve(steps_.size());
    for (std::size_t index = 0; index < steps_.size(); ++index) add_layer(index);
    if (result_.unplayable.empty()) trace();
    return std::move(result_);
  }

 private:
  void add_layer(std::size_t index) {
    const Step& step = steps_[index];
    Layer& layer = layers_.emplace_back(make_shapes(step, board_, Reach::of_a_hand));
    if (layer.shapes().empty()) {
      diagnose_step(step, board_, result_.unplayable);
      return;
    }
    if (index > 0 && !layers_[index - 1].shapes().empty()) {
      search_.advance(steps_[index - 1], layers_[index - 1], step, layer);
      if (layer.reached()) return;
      diagnose_passage(steps_[index - 1], layers_[index - 1], step, layer, board_, result_.unplayable);
    }
    // The line begins here; or goes on as if it did, to find what else is unplayable.
    begin(layer, board_);
  }

  void trace() {
    result_.events.resize(line_.events.size());
    result_.hands.assign(line_.events.size(), 0);
    if (steps_.empty()) return;
    State state = best_end();
    result_.cost = layers_.back().cost(state.shape, state.hand);
    for (std::size_t index = steps_.size(); index-- > 0;) {
      write(index, state);
      if (index > 0) state = before(index, state);
    }
    fill_rests();
  }

  State best_end() const {
    const Layer& layer = layers_.back();
    State best{0, layer.shapes().shapes.front().lowest_hand};
    for (std::size_t index = 0; index < layer.shapes().size(); ++index) {
      const Shape& shape = layer.shapes().shapes[index];
      for (int hand = shape.lowest_hand; hand <= shape.highest_hand; ++hand) {
        if (layer.cost(index, hand) < layer.cost(best.shape, best.hand)) best = {index, hand};
      }
    }
    return best;
  }

  // The first state, in order, from which the cheapest way to this one comes.
  State before(std::size_t index, State state) const {
    const Layer& to = layers_[index];
    const Layer& from = layers_[index - 1];
    const Step& step = steps_[index - 1];
    const Shape& reached = to.shapes().shapes[state.shape];
    const Spots spots = to.shapes().spots_of(state.shape);
    const std::int64_t cost = to.cost(state.shape, state.hand) - reached.cost - strain(board_, reached, state.hand);
    for (std::size_t shape = 0; shape < from.shapes().size(); ++shape) {
      const Passage pass = passage(step, from.shapes().spots_of(shape), steps_[index], spots, board_);
      if (pass.cost > cost) continue;
      const Shape& left = from.shapes().shapes[shape];
      const int target = hand_before_slide(board_, state.hand, pass.slide);
      for (int hand = left.lowest_hand; hand <= left.highest_hand; ++hand) {
        const std::int64_t way = from.cost(shape, hand) + travel(board_, step, left.free(), hand, target) + pass.cost;
        if (way == cost) return {shape, hand};
      }
    }
    return {};  // never: the search took the cost from one of them
  }

  void write(std::size_t index, State state) {
    const Step& step = steps_[index];
    const auto event = static_cast<std::size_t>(step.event);
    const Spots spots = layers_[index].shapes().spots_of(state.shape);
    const std::vector<NoteToPlace>& notes = line_.events[event].notes;
    result_.hands[event] = state.hand;
    result_.events[event].resize(notes.size());
    for (std::size_t note = 0; note < notes.size(); ++note) {
      PlacedNote& placed = result_.events[event][note];
      placed.place = spots[note].place;
      const int string = placed.place.string;
      for (const GraceToPlace& grace : notes[note].graces) {
        placed.graces.push_back({string, fret_of(board_.neck, string, grace.midi).value_or(0)});
      }
    }
  }

  // In a rest the hand waits where it was; before the first note, where that will be.
  void fill_rests() {
    int hand = result_.hands[static_cast<std::size_t>(steps_.front().event)];
    for (int& here : result_.hands) {
      if (here == 0) here = hand;
      hand = here;
    }
  }

  const Line& line_;
  Board board_;
  std::vector<Step> steps_;
  Search search_;
  std::vector<Layer> layers_;
  Fingering result_;
};

}  // namespace

Fingering find_fingering(const Line& line, const Neck& neck, double scale_length) {
  return Finder(line, neck, scale_length).run();
}

}  // namespace fretsheaf::fretboard
