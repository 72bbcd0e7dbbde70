#pragma once

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// Makes `%` of the bars under a bar-repeat sign that say what a `%` would; a sign over anything else is a loss.
void find_repeats(const AdoptContext& context, const Section& section, lesson::Music& music);

// Where words stand inside a `%` bar, or lines begin or end there, its counts are written.
void unfold_repeats(lesson::Music& music);

}  // namespace fretsheaf::exchange
