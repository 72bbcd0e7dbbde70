#pragma once

#include <string>

#include "fretboard/neck.h"
#include "lesson/music.h"

namespace fretsheaf::lesson {

// Writes music as a tab grid, every beat counted and up to four bars a strip, so that the reader of grids makes that
// music of it again: its bars, events, words, marks and ways. Ranges are not looked at. Words lose what a grid cannot
// hold: see `grid_words`.
// REQUIRES: music as the reader makes it (events without gaps from each bar's begin to its end, notes by string, every
// place on the neck), no `vary` slots; positions are counts that a grid can write: see `can_count`.
std::string grid_text(const Music& music, const fretboard::Neck& neck);

// Whether a count can say that position of a bar in the meter: a beat, and up to a 64th part of it.
bool can_count(Rational at, const theory::Meter& meter);

// A text as one line without control characters, and without `{{`, which would ask for a filling. As long as a line may
// be (limits::line); of more, the beginning.
std::string plain_line(const std::string& text);
bool fits_line(const std::string& text);  // whether nothing of it is cut off

// The same as a grid can hold it: double quotes as single ones, and never three single quotes side by side, which would
// end the TOML string. As long as a word may be.
std::string grid_words(const std::string& text);
bool fits_words(const std::string& text);

}  // namespace fretsheaf::lesson
