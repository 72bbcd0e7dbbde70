#pragma once

#include <vector>

#include "fretboard/neck.h"
#include "lesson/lesson.h"
#include "theory/chord.h"

namespace fretsheaf::transposition {

struct PictureMove {
  const lesson::Music& before;  // the example's music where it lay
  const fretboard::Neck& neck;  // the one that it lies on now
  int frets = 0;  // how far up its own string a pitch from before lies now: the interval, less what a higher capo gives
  bool hides_frets = false;  // a student must not see where the music went
  bool same_strings = true;  // whether frets from before mean anything on this neck
};

// Moves the frets that a neck picture and chord shapes name along with the example, whose music lies in its new places
// already. A picture of its notes, or one that covers them, goes where they go; any other as far as the pitches. Where
// the frets are hidden a picture's part of the neck is left open. A shape without open strings moves along the neck,
// the nearest way that fits; any other is left without frets, to be worked out afresh: the chords of these, as they
// sound now, are returned.
std::vector<theory::Chord> move_pictures(lesson::Example& example, const PictureMove& move);

}  // namespace fretsheaf::transposition
