#pragma once

#include <cstddef>
#include <string>

#include "spoken/phrases.h"

namespace fretsheaf::spoken {

// Whether an example's rhythm is not to be told.
bool hides_rhythm(const score::Score& score, const score::Example& example);

// How places in an example's bars are called: by their beats, or, where the rhythm is for the student to find, by their
// order. Keeps references to both.
class Places {
 public:
  Places(const score::Example& example, const Phrases& phrases)
      : example_(example), phrases_(phrases), in_order_(hides_rhythm(phrases.score(), example)) {}

  bool in_order() const { return in_order_; }
  // "beat 2 and", "note 3"
  std::string in_bar(std::size_t bar, theory::Rational at) const;
  // The same as told in another bar: "beat 1 of bar 2".
  std::string from(std::size_t bar, const lesson::Moment& moment) const;

 private:
  const score::Example& example_;
  const Phrases& phrases_;
  bool in_order_;
};

}  // namespace fretsheaf::spoken
