#pragma once

#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// Writes one event on one staff (counted from 1) as the <note> elements of its rest, strum, or notes with the grace
// notes before them.
void write_event(Element measure, const Part& part, int bar, int event, int staff);

// Writes an unseen rest for all of the bar, on a staff that has nothing to say.
void write_silence(Element measure, const Part& part, int bar, int staff);

// "quarter", "16th": MusicXML's note-type-value.
const char* type_name(int log2);

}  // namespace fretsheaf::exchange
