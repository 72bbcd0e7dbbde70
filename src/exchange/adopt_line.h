#pragma once

#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// The one line of music of a section: by measure, symbols in order that do not overlap, without rests that say nothing
// but silence. Where a notes staff and a tab say the same, the tab's heads are taken with the other's signs; two lines
// that sound at once are errors. Also finds out whether the section is a rhythm.
std::vector<std::vector<Symbol>> line_of(const AdoptContext& context, Section& section);

}  // namespace fretsheaf::exchange
