#pragma once

#include <optional>
#include <vector>

#include "fretboard/neck.h"

namespace fretsheaf::fretboard {

// The fret at which a string sounds that pitch; nullopt where it has none.
std::optional<int> fret_of(const Neck& neck, int string, int midi);
// Every place where the pitch sounds, the top line first.
std::vector<Place> places_of(const Neck& neck, int midi);
// Every place where a natural harmonic of that pitch sounds (its sounding pitch, see Neck::harmonic_midi) over a fret
// that the neck has: the top line first, frets rising.
std::vector<Place> harmonic_places_of(const Neck& neck, int midi);

// The lowest and the highest note that any of the neck's strings sounds, open or stopped.
int lowest_midi(const Neck& neck);
int highest_midi(const Neck& neck);

}  // namespace fretsheaf::fretboard
