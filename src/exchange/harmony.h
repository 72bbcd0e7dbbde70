#pragma once

#include "exchange/element.h"
#include "score/score.h"

namespace fretsheaf::exchange {

// Writes a chord symbol as a <harmony> of the measure. `offset` is how many divisions after the current place it
// stands.
void write_harmony(Element measure, const score::ChordMark& mark, long long offset);

// The <kind> value of a chord's kind (MusicXML 4.0, kind-value).
const char* kind_value(theory::ChordKind kind);

// The MusicXML name of a step ("C").
std::string step_name(theory::Letter letter);

}  // namespace fretsheaf::exchange
