#pragma once

#include "exchange/adopt_music.h"
#include "fretboard/neck.h"
#include "lesson/lesson.h"

namespace fretsheaf::exchange {

// Forces a note's name where the lesson would give it another than the document does; bars written `%` take the names
// of the bar that they repeat. REQUIRES: the names are the example's.
void force_spellings(const WantedNames& names, const fretboard::Neck& neck, lesson::Example& example);

}  // namespace fretsheaf::exchange
