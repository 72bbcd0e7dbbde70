#include "theory/interval.h"

#include "theory/arithmetic.h"

namespace fretsheaf::theory {

namespace {

constexpr int letters = 7;

Letter letter_at(int diatonic) {
  return static_cast<Letter>(floor_mod(diatonic, letters));
}

}  // namespace

Interval interval(Pitch from, Pitch to) {
  return {to.diatonic() - from.diatonic(), to.midi() - from.midi()};
}

Interval interval(NoteName from, NoteName to) {
  const int octave = to.letter < from.letter ? 1 : 0;
  return interval(Pitch{from, 0}, Pitch{to, octave});
}

Pitch transposed(Pitch pitch, Interval by) {
  const int diatonic = pitch.diatonic() + by.steps;
  Pitch moved{{letter_at(diatonic), 0}, floor_div(diatonic, letters)};
  moved.name.alteration = pitch.midi() + by.semitones - moved.midi();
  return moved;
}

NoteName transposed(NoteName name, Interval by) {
  return transposed(Pitch{name, 4}, by).name;
}

NoteName shifted(NoteName name, int fifths) {
  return note_name_from_fifths(name.fifths() + fifths);
}

}  // namespace fretsheaf::theory
