#pragma once

#include "fretboard/neck.h"

namespace fretsheaf::fretboard {

// A hand's span between the frets of its outer fingers, in mm (common practice): easy up to the first, hardly anyone's
// beyond the second.
inline constexpr double easy_reach = 100;
inline constexpr double most_reach = 130;

// How far fret n lies from the nut of a string of that length: L(1 - 2^(-n/12)), in the unit of the length.
double fret_distance(double scale_length, int fret);

// Where a fret of this neck lies, in mm from the neck's own nut (frets are counted from the capo, which does not
// change where they are).
double fret_position(const Neck& neck, double scale_length, int fret);

}  // namespace fretsheaf::fretboard
