#pragma once

#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// How loud the dynamics and hairpins that a `%` repeats sound where an event of its bar starts: they are heard and not
// printed, so sounds say them alone; a hairpin's by steps, event by event.
void write_repeated_loudness(Element measure, const Part& part, int bar, int event);

}  // namespace fretsheaf::exchange
