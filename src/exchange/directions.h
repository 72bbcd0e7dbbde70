#pragma once

#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// The tempo and name at an example's start, and its feel where that is another than before.
void write_opening(Element measure, const Part& part, bool new_feel);

// Everything that stands at an event's start: dynamics, hairpins that begin, section marks, words, road signs.
void write_directions_at(Element measure, const Part& part, int bar, int event);

// What ends with an event: hairpins and lines whose last one it is, a fine.
void write_directions_after(Element measure, const Part& part, int bar, int event);

// What ends with its bar: jumps, how often a repeat is played.
void write_directions_at_end(Element measure, const Part& part, int bar);

}  // namespace fretsheaf::exchange
