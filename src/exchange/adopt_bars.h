#pragma once

#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// The bars of a section with their meters, where they begin and end, bar lines, repeats and endings; no events. A
// measure that is neither as long as its meter nor a pickup, nor one of two halves around a bar line, gets a meter of
// its own length, and a warning. `may_begin_late`, by bar: whether something starts at its beginning.
lesson::Music bars_of(const AdoptContext& context, const Section& section, const std::vector<bool>& may_begin_late);

// How long a measure of the part is: its music, or all of its meter where it has none or rests for a bar alone.
Rational length_of(const TakenMeasure& measure, const theory::Meter& meter);

}  // namespace fretsheaf::exchange
