#include "spoken/places.h"

namespace fretsheaf::spoken {

bool hides_rhythm(const score::Score& score, const score::Example& example) {
  return example.hidden.rhythm && !score.answer_key;
}

std::string Places::in_bar(std::size_t bar, theory::Rational at) const {
  const score::Bar& own = example_.bars[bar];
  if (!in_order_) return phrases_.beat(at, own.meter);
  int n = 0;
  for (const score::Event& event : own.events) {
    if (event.at > at) break;
    if (event.blank) return std::string(phrases_[Sentence::then]);
    ++n;
  }
  return phrases_(Sentence::nth_note, n);
}

std::string Places::from(std::size_t bar, const lesson::Moment& moment) const {
  const auto index = static_cast<std::size_t>(moment.bar);
  std::string where = in_bar(index, moment.at);
  if (index == bar) return where;
  return phrases_(Sentence::of_bar, {{"where", where}, {"n", std::to_string(example_.bars[index].number)}});
}

}  // namespace fretsheaf::spoken
