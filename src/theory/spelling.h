#pragma once

#include <optional>

#include "theory/chord.h"
#include "theory/key.h"
#include "theory/pitch.h"

namespace fretsheaf::theory {

// What is known about a note when its letter is chosen.
struct SpellingContext {
  Key key;
  std::optional<Chord> chord;    // in force
  std::optional<int> next_midi;  // the next note of another pitch, where one follows: it decides chromatic notes
  std::optional<int> previous_midi;  // the one before: it decides where that cannot
};

// The name of a sounding pitch, in which every step is counted on the line of fifths from the key or the chord: the
// same line in another key gets the same names, moved. It may need three accidentals, where music has no sign: what is
// printed is its practical() name, while degrees are counted from this one.
//  - Chord tones and the chord's bass take the chord's letters, other scale notes the key's.
//  - Other notes that stand in the major scale on the tonic are named so: the raised sixth and seventh of a minor key.
//  - The rest lie between two degrees. Where the note that follows is one of those above, the name nearer to it on the
//    line of fifths is taken, so that a semitone approach has the neighbouring letter, rising chromatic notes are
//    raised and falling ones lowered (the tables of Open Music Theory, chromaticSolfege, follow from it), and a leap
//    makes no odd interval: Eb goes up to F, never D#. A semitone to or from another chromatic note goes by its
//    direction.
//  - Before a tritone, to which both names are as near, and where nothing follows, the note that comes before decides in
//    the same way.
//  - Else #1 b3 #4 b6 b7, and in keys with a minor third b2 for #1: the names nearest to the key on the line of fifths.
NoteName spell(int midi, const SpellingContext& context);

}  // namespace fretsheaf::theory
