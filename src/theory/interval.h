#pragma once

#include "theory/pitch.h"

namespace fretsheaf::theory {

// A directed interval as musicians spell it: letters and semitones. A major third up is {2, 4}.
struct Interval {
  int steps = 0;
  int semitones = 0;

  bool operator==(const Interval&) const = default;
};

// From one pitch or name (the upward interval within an octave) to another.
Interval interval(Pitch from, Pitch to);
Interval interval(NoteName from, NoteName to);
Pitch transposed(Pitch pitch, Interval by);
NoteName transposed(NoteName name, Interval by);

// Along the line of fifths: what happens to every name of a piece when its key's tonic goes that way. May need three
// accidentals (see practical()).
NoteName shifted(NoteName name, int fifths);

}  // namespace fretsheaf::theory
