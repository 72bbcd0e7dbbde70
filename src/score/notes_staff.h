#pragma once

#include "fretboard/neck.h"
#include "score/score.h"

namespace fretsheaf::score {

// Says of every note and grace note of an example where it stands on the notes staff and which accidental is before it.
//  - Written is what sounds, an octave higher where the instrument sounds an octave lower than written. A natural
//    harmonic's diamond stands where the string is touched (common practice of fretted instruments), and so stays near
//    the staff.
//  - An accidental holds on its own line or space to the end of the bar. A note tied over a bar line has none, and
//    gives none to the notes after it (Gould, Behind Bars, 2011, pp. 78-81, from memory).
//  - Cautionary ones: a line that was altered in the bar before, or by a tie from it, the first time that it is not;
//    and a letter that is altered in another octave of the same bar (the same pages, from memory).
//  - Two notes on one line that differ in a chord both have theirs. Dead notes have none.
// Works on `bars` and `key`.
void write_on_staff(Example& example, const fretboard::Neck& neck, bool sounds_octave_lower);

}  // namespace fretsheaf::score
