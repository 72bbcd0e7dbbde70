#include "theory/keys.h"

namespace fretsheaf::theory {

bool has_signature(const Key& key) {
  return key.signature() >= -7 && key.signature() <= 7;
}

std::vector<Key> all_keys(Mode mode) {
  std::vector<Key> keys;
  keys.reserve(12);
  for (int semitones = 0; semitones < 12; ++semitones) {
    // Seven fifths make a semitone, whatever its name: the enharmonic choice follows.
    keys.push_back(enharmonic_key({note_name_from_fifths(7 * semitones), mode}));
  }
  return keys;
}

}  // namespace fretsheaf::theory
