#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "score/score.h"

namespace fretsheaf::exchange {

// A note of an example: its bar and event, its index there, and which of its grace notes (-1: itself).
struct Tone {
  int bar = 0;
  int event = 0;
  int note = 0;
  int grace = -1;

  auto operator<=>(const Tone&) const = default;
};

// A hammer-on, pull-off or slide from one note to the next on its string.
struct Join {
  lesson::Approach kind = lesson::Approach::none;
  int number = 1;  // MusicXML tells overlapping ones of a kind apart by it: the string
};

// What is written on a note because of its neighbours on the string.
struct Joins {
  std::optional<Join> from;  // it ends one
  std::optional<Join> to;    // it begins one
};

// Every note of an example that is joined to another.
std::map<Tone, Joins> joins_of(const score::Example& example);

// How many divisions of a quarter note make every duration of the example a whole number.
std::int64_t divisions_of(const score::Example& example);

// The bars (by index) that a `:|` without a `|:` of its own goes back to.
std::vector<bool> repeat_targets(const score::Example& example);

enum class StaffKind { notes, tab, strums };

// What the export of an example knows while it writes.
struct Part {
  const score::Score& score;
  const score::Example& example;
  std::vector<StaffKind> staves;  // top down; MusicXML numbers them from 1
  std::int64_t divisions = 1;
  std::map<Tone, Joins> joins;
  std::vector<bool> targets;

  // A length in divisions.
  std::int64_t ticks(theory::Rational length) const { return (length * theory::Rational(4 * divisions)).numerator(); }
};

}  // namespace fretsheaf::exchange
