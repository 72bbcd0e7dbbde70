#pragma once

#include <vector>

namespace fretsheaf::transposition {

// The intervals in semitones, up to four octaves, that lead to a tonic `semitones` above the old one: the nearest
// first, of two as near the one down.
std::vector<int> intervals_to(int semitones);

}  // namespace fretsheaf::transposition
