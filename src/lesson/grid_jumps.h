#pragma once

#include "lesson/grid_rows.h"

namespace fretsheaf::lesson {

// Warns of a hand that would leap more than twelve frets between two quick notes, an eighth apart or less: legal, and
// more often a slip. Open strings and dead notes hold no hand.
void warn_of_jumps(const GridInput& input, const Music& music);

}  // namespace fretsheaf::lesson
