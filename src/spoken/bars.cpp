#include "spoken/bars.h"

#include <cstddef>
#include <cstdlib>
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>

#include "spoken/bar_body.h"
#include "spoken/bar_frame.h"

namespace fretsheaf::spoken {
namespace {

// A bar's words with, in place of its frets, how far each is from the first: equal for two bars of which one is the
// other moved up or down the neck. nullopt where there is no fret, or an open string: a hand that moves leaves those
// behind.
std::optional<std::string> shape_of(const BarBody& body) {
  if (body.frets.empty()) return std::nullopt;
  std::string shape;
  shape.reserve(body.text.size());
  std::size_t at = 0;
  for (const SaidFret& said : body.frets) {
    if (said.fret == 0) return std::nullopt;
    shape.append(body.text, at, said.begin - at);
    shape += std::to_string(said.fret - body.frets.front().fret);
    at = said.begin + said.size;
  }
  shape.append(body.text, at);
  return shape;
}

// The bars told in full so far, to which a later one may be likened.
class Told {
 public:
  Told(const score::Example& example, const Phrases& phrases) : example_(example), phrases_(phrases) {
    for (const score::Bar& bar : example.bars) ++bars_[bar.number];
  }

  // The bar's words: its own, or those that name another where they are fewer.
  std::string said(std::size_t bar, const BarBody& body) {
    if (body.text.find('\n') == std::string::npos) return body.text;  // one sentence is told as soon
    const std::optional<std::string> shape = shape_of(body);
    std::string like = likened(body, shape);
    if (!like.empty() && like.size() < body.text.size()) return like;
    // A bar of two parts, or a pickup, is not called by its number.
    const int number = example_.bars[bar].number;
    if (number > 0 && bars_[number] == 1) {
      by_text_.emplace(body.text, number);
      if (shape) by_shape_.emplace(*shape, Moved{number, body.frets.front().fret});
    }
    return body.text;
  }

 private:
  struct Moved {
    int number;
    int first_fret;
  };

  std::string likened(const BarBody& body, const std::optional<std::string>& shape) const {
    std::string said;
    if (const auto same = by_text_.find(body.text); same != by_text_.end()) {
      add_sentence(said, phrases_(Sentence::as_bar, same->second));
      return said;
    }
    const auto moved = shape ? by_shape_.find(*shape) : by_shape_.end();
    if (moved == by_shape_.end()) return said;
    const int by = body.frets.front().fret - moved->second.first_fret;
    const Sentence one = by > 0 ? Sentence::frets_higher_one : Sentence::frets_lower_one;
    add_sentence(said, phrases_(Sentence::as_bar_moved, {{"n", std::to_string(moved->second.number)},
                                                         {"frets", phrases_.counted(one, std::abs(by))}}));
    return said;
  }

  const score::Example& example_;
  const Phrases& phrases_;
  std::unordered_map<std::string, int> by_text_;
  std::unordered_map<std::string, Moved> by_shape_;
  std::map<int, int> bars_;  // by their number: how many have it
};

}  // namespace

std::vector<SaidBar> bars_of(const score::Example& example, const Phrases& phrases) {
  const Places places(example, phrases);
  const std::vector<std::vector<Mark>> marks = marks_of(example, places, phrases);
  Told told(example, phrases);
  std::vector<SaidBar> bars;
  bars.reserve(example.bars.size());
  for (std::size_t i = 0; i < example.bars.size(); ++i) {
    SaidBar bar;
    bar.head = head_of(example, i, marks[i], phrases);
    // Even spacing leaves a bar that is printed as a repeat sign without notes.
    if (places.in_order() && example.bars[i].same_as_previous) {
      add_sentence(bar.body, phrases[Sentence::as_before]);
    } else {
      bar.body = told.said(i, body_of(example, i, marks[i], places, phrases));
    }
    bar.tail = tail_of(example, i, phrases);
    bars.push_back(std::move(bar));
  }
  return bars;
}

}  // namespace fretsheaf::spoken
