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
      : line_(line), neck_(neck), rule_(neck, scale_length), steps_(make_steps(line, neck)) {}

  Fingering run() {
    for (std::size_t index = 0; index < steps_.size(); ++index) add_layer(index);
    if (result_.unplayable.empty()) trace();
    return std::move(result_);
  }

 private:
  void add_layer(std::size_t index) {
    const Step& step = steps_[index];
    Shapes shapes = make_shapes(step, step.slots.size(), neck_, rule_, false);
    if (shapes.shapes.empty()) {
      diagnose_step(step, neck_, rule_, result_.unplayable);
      layers_.push_back(first_layer(std::move(shapes), rule_));
      return;
    }
    if (index == 0 || layers_.back().shapes.shapes.empty()) {
      layers_.push_back(first_layer(std::move(shapes), rule_));
      return;
    }
    layers_.push_back(next_layer(steps_[index - 1], layers_.back(), step, shapes, neck_, rule_));
    if (layers_.back().reached()) return;
    // Go on as if the line began here, to find what else is unplayable.
    diagnose_passage(steps_[index - 1], layers_[index - 1], step, neck_, rule_, result_.unplayable);
    layers_.back() = first_layer(std::move(shapes), rule_);
  }

  void trace() {
    result_.events.resize(line_.events.size());
    result_.hands.assign(line_.events.size(), 0);
    if (steps_.empty()) return;
    std::vector<State> states(steps_.size());
    states.back() = best_end();
    result_.cost = layers_.back().cost(states.back().shape, states.back().hand);
    for (std::size_t index = steps_.size(); index-- > 1;) states[index - 1] = before(index, states[index]);
    for (std::size_t index = 0; index < steps_.size(); ++index) write(index, states[index]);
    fill_rests();
  }

  State best_end() const {
    const Layer& layer = layers_.back();
    State best{0, layer.shapes.shapes.front().lowest_hand};
    for (std::size_t index = 0; index < layer.shapes.shapes.size(); ++index) {
      const Shape& shape = layer.shapes.shapes[index];
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
    const Shape& reached = to.shapes.shapes[state.shape];
    const std::int64_t cost = to.cost(state.shape, state.hand) - reached.cost - strain(rule_, reached, state.hand);
    for (std::size_t shape = 0; shape < from.shapes.shapes.size(); ++shape) {
      const Passage pass =
          passage(step, from.shapes.places_of(shape), steps_[index], to.shapes.places_of(state.shape), neck_);
      if (pass.cost >= no_way) continue;
      const Shape& left = from.shapes.shapes[shape];
      const int target = hand_before_slide(rule_, state.hand, pass.slide);
      for (int hand = left.lowest_hand; hand <= left.highest_hand; ++hand) {
        const std::int64_t way = from.cost(shape, hand) + travel(rule_, step, left.free(), hand, target) + pass.cost;
        if (way == cost) return {shape, hand};
      }
    }
    return {};  // never: next_layer took the cost from one of them
  }

  void write(std::size_t index, State state) {
    const Step& step = steps_[index];
    const auto event = static_cast<std::size_t>(step.event);
    const auto places = layers_[index].shapes.places_of(state.shape);
    for (std::size_t note = 0; note < line_.events[event].notes.size(); ++note) {
      PlacedNote placed{places[note], {}};
      for (const GraceToPlace& grace : step.slots[note].note->graces) {
        const int string = places[note].string;
        placed.graces.push_back({string, fret_of(neck_, string, grace.midi).value_or(0)});
      }
      result_.events[event].push_back(std::move(placed));
    }
    result_.hands[event] = state.hand;
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
  const Neck& neck_;
  FretRule rule_;
  std::vector<Step> steps_;
  std::vector<Layer> layers_;
  Fingering result_;
};

}  // namespace

Fingering find_fingering(const Line& line, const Neck& neck, double scale_length) {
  return Finder(line, neck, scale_length).run();
}

}  // namespace fretsheaf::fretboard
