#include "fretboard/places.h"

#include <algorithm>

namespace fretsheaf::fretboard {

std::optional<int> fret_of(const Neck& neck, int string, int midi) {
  const int above_open = midi - neck.midi({string, 0});
  const Place place{string, above_open > 0 ? above_open + neck.nut(string) : above_open};
  if (!neck.has(place)) return std::nullopt;
  return place.fret;
}

std::vector<Place> places_of(const Neck& neck, int midi) {
  std::vector<Place> places;
  for (int string = 1; string <= neck.strings(); ++string) {
    if (const std::optional<int> fret = fret_of(neck, string, midi)) places.push_back({string, *fret});
  }
  return places;
}

std::vector<Place> harmonic_places_of(const Neck& neck, int midi) {
  std::vector<Place> places;
  for (int string = 1; string <= neck.strings(); ++string) {
    for (int fret = 1; fret <= neck.last_fret(); ++fret) {
      const Place place{string, fret};
      if (neck.has(place) && neck.harmonic_midi(place) == midi) places.push_back(place);
    }
  }
  return places;
}

int lowest_midi(const Neck& neck) {
  int lowest = neck.midi({1, 0});
  for (int string = 2; string <= neck.strings(); ++string) lowest = std::min(lowest, neck.midi({string, 0}));
  return lowest;
}

int highest_midi(const Neck& neck) {
  int highest = 0;
  for (int string = 1; string <= neck.strings(); ++string) {
    // A short string may have no fret before the neck ends: then it is open.
    const Place last{string, neck.last_fret()};
    highest = std::max(highest, neck.midi(neck.has(last) ? last : Place{string, 0}));
  }
  return highest;
}

}  // namespace fretsheaf::fretboard
