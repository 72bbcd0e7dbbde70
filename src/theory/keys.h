#pragma once

#include <vector>

#include "theory/key.h"

namespace fretsheaf::theory {

// Whether music has a signature for the key: up to seven sharps or flats.
bool has_signature(const Key& key);

// What "all" means in `also-in`: the twelve keys of the mode with the fewest signs, the flat one where two have six, in
// rising order of sound from C. The signatures run from six flats to five sharps.
std::vector<Key> all_keys(Mode mode);

}  // namespace fretsheaf::theory
