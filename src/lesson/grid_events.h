#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Makes what sounds from one count to the next, bar after bar: what starts, what is held on, where each note comes
// from. REQUIRES: set_times has run.
void make_events(const GridInput& input, const GridDraft& draft, Music& music);

}  // namespace fretsheaf::lesson
