#pragma once

#include <optional>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// A form that is written out: bars with a slash on every beat, which a section has before and after its notes. The
// section is then its bars of notes alone, its name and where a repeat begins moved to them; `part` is the context's.
// nullopt where the section has no such bars, or something else beside its notes. The bars that the form marks are not
// known yet: see mark_bars.
std::optional<lesson::Form> take_form(const AdoptContext& context, TakenPart& part, Section& section);

// Marks the bars of the music that stands in it.
void mark_bars(lesson::Form& form, const Section& section, const lesson::Music& music);

}  // namespace fretsheaf::exchange
