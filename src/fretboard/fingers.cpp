#include "fretboard/fingers.h"

#include <algorithm>

namespace fretsheaf::fretboard {

namespace {

// Whether the place needs a finger of its own: none at its fret on a higher line has a barre that comes down to it.
bool needs_finger(std::span<const Place> places, Place place) {
  if (place.fret == 0) return false;
  const Place* above = nullptr;
  for (const Place& other : places) {
    const bool nearer = other.string < place.string && (above == nullptr || other.string > above->string);
    if (nearer && other.fret <= place.fret) above = &other;
  }
  return above == nullptr || above->fret != place.fret;
}

}  // namespace

int fingers_needed(std::span<const Place> places) {
  return static_cast<int>(std::ranges::count_if(places, [&](Place place) { return needs_finger(places, place); }));
}

}  // namespace fretsheaf::fretboard
