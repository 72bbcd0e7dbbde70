#pragma once

#include <span>

#include "fretboard/neck.h"

namespace fretsheaf::fretboard {

// The fewest fingers that can stop those places at once: one for each, but one barre for neighbours at the same fret
// between which no string sounds open or at a lower fret. Places at fret 0 sound open.
int fingers_needed(std::span<const Place> places);

}  // namespace fretsheaf::fretboard
