#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "theory/meter.h"
#include "theory/rational.h"

namespace fretsheaf::theory {

enum class Feel { straight, swing, shuffle, swing_16 };

std::string_view feel_name(Feel feel);  // "swing-16"
std::vector<std::string_view> feel_names();
std::optional<Feel> parse_feel(std::string_view text);

// The note value that a metronome number counts, in whole notes: a quarter 1/4, a dotted quarter 3/8.
std::optional<Rational> parse_beat_unit(std::string_view text);  // "quarter", "dotted quarter", "half", "eighth" …
std::vector<std::string> beat_unit_names();                      // every text that parse_beat_unit knows
// The meter's own: the count, or three of them in a compound meter.
Rational beat_unit(const Meter& meter);

enum class RungSpacing { even, ratio };

// A tempo as written. One number: {from = to, rungs 1}.
struct Tempo {
  int from = 0;
  int to = 0;
  std::optional<int> step;
  std::optional<int> rungs;
  RungSpacing spacing = RungSpacing::even;
  int passes = 4;
  bool pair = false;  // written as [slow, fast]
  std::optional<Rational> beat;

  bool ladder() const { return !pair && from != to; }
};

// The tempos to climb, lowest first, the goal always last, each once. With `step` every so many from the first up;
// with `rungs` so many, evenly spaced by difference or by ratio, rounded to whole beats a minute. With neither, the two
// ends.
std::vector<int> ladder_rungs(const Tempo& tempo);

// Quarter notes a minute, as MusicXML's sound element counts.
Rational quarters_per_minute(int tempo, Rational beat);

}  // namespace fretsheaf::theory
