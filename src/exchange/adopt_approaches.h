#pragma once

#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// Settles how each note is reached, as a reader of the grid will: what does not lead there is a loss. REQUIRES: every
// note has its place, no two of a happening on one string.
void settle_approaches(const AdoptContext& context, std::vector<Happening>& happenings);

}  // namespace fretsheaf::exchange
