#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>
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

// Where a syllable stands in its word, by verse (row), bar and index in the bar's lyrics: "single", "begin", …
using Syllables = std::vector<std::vector<const char*>>;
Syllables syllables_of(const score::Example& example);

// Which written symbols a palm mute, a let ring or a tremolo covers, by bar and event.
struct SpanCover {
  std::set<std::pair<int, int>> palm_mute;
  std::set<std::pair<int, int>> let_ring;
  std::set<std::pair<int, int>> tremolo;
};
SpanCover cover_of(const score::Example& example);

// The notes that need an accidental which the score has no sign for: there a harmonic on the same line has said it,
// whose pitch in a document is what sounds and not where it is touched.
std::set<Tone> bare_accidentals_of(const score::Example& example);

// How many divisions of a quarter note make every duration of the example a whole number.
std::int64_t divisions_of(const score::Example& example);

// The bars (by index) that a `:|` without a `|:` of its own goes back to.
std::vector<bool> repeat_targets(const score::Example& example);

// The bars (by index) that a bar-repeat sign may stand for: the same symbols as in the bar before. A `%` after a bar
// that begins by holding a rest may hold a note.
std::vector<bool> bar_repeats(const score::Example& example);

// What an example writes on a staff. A rhythm writes its strums on the first one and leaves the tab silent.
enum class StaffKind { notes, tab, strums, silent };

// The staves of the whole part, top down, in all of its measures: notes over tab, or one of strums where no example has
// strings. A part whose staves come and go is one that few programs read.
std::vector<StaffKind> staves_of(const score::Score& score);
// What the example writes on them.
std::vector<StaffKind> staves_of(const score::Score& score, const score::Example& example);

// What the export of an example knows while it writes.
struct Part {
  const score::Score& score;
  const score::Example& example;
  std::vector<StaffKind> staves;  // top down, as this example writes on them; MusicXML numbers them from 1
  std::int64_t divisions = 1;
  std::map<Tone, Joins> joins;
  std::vector<bool> targets;
  std::vector<bool> bar_repeats;
  Syllables syllables;
  SpanCover cover;
  std::set<Tone> bare_accidentals;

  // A length in divisions.
  std::int64_t ticks(theory::Rational length) const { return (length * theory::Rational(4 * divisions)).numerator(); }
};

}  // namespace fretsheaf::exchange
