#pragma once

#include <vector>

#include "exchange/adopt_section.h"
#include "theory/tempo.h"

namespace fretsheaf::exchange {

// Gives every note its place: the document's own where it has one, else by the fingering search, for which those stay
// where they are. Then settles how each note is reached, as a reader of the grid will: what does not lead there is a
// loss.
void find_places(const AdoptContext& context, const Section& section, const std::optional<theory::Tempo>& tempo,
                 std::vector<Happening>& happenings);

}  // namespace fretsheaf::exchange
