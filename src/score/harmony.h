#pragma once

#include <optional>
#include <vector>

#include "lesson/lesson.h"
#include "score/score.h"

namespace fretsheaf::score {

// The chords of one example: what each mark means in its key, and which chord is in force where.
class Harmony {
 public:
  // `capo`: the marks say the chord as fingered, too, where it is above 0.
  Harmony(const lesson::Example& example, int capo);

  const std::vector<ChordMark>& marks(std::size_t bar) const { return marks_[bar]; }
  // The chord in force at a place of a bar; nullopt before the first and under N.C.
  std::optional<theory::Chord> in_force(std::size_t bar, Rational at) const;

 private:
  std::vector<std::vector<ChordMark>> marks_;           // by bar
  std::vector<std::optional<theory::Chord>> at_start_;  // in force where each bar begins
};

// The key of the shapes under a capo: as far down as the capo lies up the neck, spelled with the fewest signs.
theory::Key fingered_key(const theory::Key& key, int capo);

// The chord as the hand shapes it under a capo: as far down as the capo lies up the neck, spelled as the key of those
// shapes is with the fewest signs (E major with a capo at 1 is fingered as E flat).
theory::Chord fingered(const theory::Chord& chord, const theory::Key& key, int capo);

}  // namespace fretsheaf::score
