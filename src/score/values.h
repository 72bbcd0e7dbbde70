#pragma once

#include <optional>

#include "score/score.h"

namespace fretsheaf::score {

// The shortest written value: a 256th. Shorter ones have neither a flag nor a rest in the music font.
inline constexpr int shortest_log2 = 8;

// The one value, with at most one dot, that lasts exactly so long; nullopt where there is none, or where it would be
// longer than a dotted whole note or shorter than a 256th. Double dots are not used: a tie is easier to read.
std::optional<NoteValue> value_of(Rational length);

bool power_of_two(std::int64_t number);

}  // namespace fretsheaf::score
