#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "theory/rational.h"

namespace fretsheaf::exchange {

// MIDI velocities that the trade plays dynamics at, as a percentage of 90 (MusicXML 4.0, sound/dynamics). The
// velocities are common practice.
std::optional<theory::Rational> loudness(std::string_view dynamic);

// The dynamic that is played nearest to such a percentage.
std::string dynamic_of(theory::Rational percentage);

// The level of the next louder or softer dynamic than such a percentage; the last one's at either end.
theory::Rational next_level(theory::Rational percentage, bool louder);

// A number as MusicXML writes decimals, six behind the point at the most: "88.888889", "2".
std::string decimal_text(theory::Rational value);

}  // namespace fretsheaf::exchange
