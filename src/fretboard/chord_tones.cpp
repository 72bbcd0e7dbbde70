#include "fretboard/chord_tones.h"

#include <algorithm>

namespace fretsheaf::fretboard {

namespace {

// The order in which tones go (common practice), each far dearer than the one before so that it goes after it.
constexpr int no_fifth = 3;
constexpr int no_ninth = 20;
constexpr int no_eleventh = 45;

std::optional<int> cost_to_miss(theory::Degree degree, const std::vector<theory::Degree>& degrees) {
  const auto has = [&](int number) {
    return std::ranges::any_of(degrees, [&](theory::Degree other) { return other.number == number; });
  };
  if (degree.alteration != 0) return std::nullopt;
  if (degree.number == 5 && degrees.size() > 3) return no_fifth;
  if (degree.number == 9 && (has(11) || has(13))) return no_ninth;
  if (degree.number == 11 && has(13)) return no_eleventh;
  return std::nullopt;
}

}  // namespace

ChordTones::ChordTones(const theory::Chord& chord) {
  const std::vector<theory::Degree> degrees = theory::chord_degrees(chord);
  const std::vector<theory::NoteName> names = theory::chord_tones(chord);
  for (std::size_t index = 0; index < names.size(); ++index) {
    tones_.push_back({names[index].pitch_class(), cost_to_miss(degrees[index], degrees)});
  }
  bass_ = chord.bass.value_or(chord.root).pitch_class();
  const auto same = [&](const Tone& tone) { return tone.pitch_class == bass_; };
  const auto bass = std::ranges::find_if(tones_, same);
  if (bass == tones_.end()) {
    tones_.push_back({bass_, std::nullopt});
  } else {
    bass->cost_to_miss.reset();
  }
}

bool ChordTones::has(int midi) const {
  return std::ranges::any_of(tones_, [&](const Tone& tone) { return tone.pitch_class == midi % 12; });
}

std::optional<int> ChordTones::missing_cost(const std::vector<int>& pitches) const {
  int cost = 0;
  for (const Tone& tone : tones_) {
    const bool there = std::ranges::any_of(pitches, [&](int pitch) { return pitch % 12 == tone.pitch_class; });
    if (there) continue;
    if (!tone.cost_to_miss) return std::nullopt;
    cost += *tone.cost_to_miss;
  }
  return cost;
}

}  // namespace fretsheaf::fretboard
