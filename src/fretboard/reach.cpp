#include "fretboard/reach.h"

#include <cmath>

namespace fretsheaf::fretboard {

double fret_distance(double scale_length, int fret) {
  return scale_length * (1 - std::exp2(-fret / 12.0));
}

double fret_position(const Neck& neck, double scale_length, int fret) {
  return fret_distance(scale_length, neck.capo + fret);
}

}  // namespace fretsheaf::fretboard
