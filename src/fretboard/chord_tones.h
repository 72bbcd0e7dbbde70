#pragma once

#include <optional>
#include <vector>

#include "theory/chord.h"

namespace fretsheaf::fretboard {

// The tones that a shape of a chord needs, and those that it may do without.
class ChordTones {
 public:
  explicit ChordTones(const theory::Chord& chord);

  bool has(int midi) const;
  bool is_bass(int midi) const { return midi % 12 == bass_; }
  bool is_power() const { return tones_.size() == 2; }
  // What it costs that some tones are missing; nullopt where one is that must not.
  std::optional<int> missing_cost(const std::vector<int>& pitches) const;

 private:
  struct Tone {
    int pitch_class = 0;
    std::optional<int> cost_to_miss;  // none: it must be there
  };

  std::vector<Tone> tones_;
  int bass_ = 0;
};

}  // namespace fretsheaf::fretboard
