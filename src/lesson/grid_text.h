#pragma once

#include <string>

#include "fretboard/neck.h"
#include "lesson/music.h"

namespace fretsheaf::lesson {

// Writes music as a tab grid, every beat counted and up to four bars a strip, so that the reader of grids makes that
// music of it again: its bars, events, words, marks and ways. Ranges are not looked at.
// REQUIRES: music as the reader makes it (events without gaps from each bar's begin to its end, notes by string, every
// place on the neck), no `vary` slots; positions are counts that a grid can write: see `can_count`; words as
// `grid_words` (plain_words.h) makes them.
std::string grid_text(const Music& music, const fretboard::Neck& neck);

// Whether a count can say that position of a bar in the meter: a beat, and up to a 64th part of it.
bool can_count(Rational at, const theory::Meter& meter);

}  // namespace fretsheaf::lesson
