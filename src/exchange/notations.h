#pragma once

#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// What stands on a note: ties, tuplet brackets, slurs and slides, technical signs, articulations. `first` is true for
// the first note of a chord, which carries what belongs to the whole event.
void write_notations(Element note, const Part& part, const Tone& tone, StaffKind kind, bool first);
void write_grace_notations(Element note, const Part& part, const Tone& tone, StaffKind kind);
void write_rest_notations(Element note, const Part& part, const Tone& tone, StaffKind kind);
void write_strum_notations(Element note, const Part& part, const Tone& tone);

// The syllables that stand under the event.
void write_lyrics(Element note, const Part& part, const Tone& tone);

}  // namespace fretsheaf::exchange
