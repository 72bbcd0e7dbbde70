#pragma once

#include <string>
#include <vector>

#include "exchange/timeline.h"

// The rules of `complaints`, one file a matter. Each adds what it finds wrong.
namespace fretsheaf::exchange::test {

using Complaints = std::vector<std::string>;

// Bars add up, every staff is filled from bar line to bar line without a gap or an overlap, written values are as long
// as they say, tuplets are whole, grace notes and chords stand on notes.
void check_time(const Timeline& timeline, Complaints& complaints);
// Ties, slurs, slides, hammer-ons, pull-offs, wavy lines, wedges and syllables begin and end in pairs that fit.
void check_pairs(const Timeline& timeline, Complaints& complaints);
// Tunings, strings, frets, pitches, bends, accidentals; what two staves of one part say.
void check_strings(const Timeline& timeline, bool short_fifth_string, Complaints& complaints);
void check_beams(const Timeline& timeline, Complaints& complaints);
// Bar lines, repeats, endings, jumps, measure numbers, measure styles.
void check_form(const Timeline& timeline, Complaints& complaints);
// Tempo, swing, dynamics, chord symbols, staff numbers.
void check_directions(const Timeline& timeline, Complaints& complaints);
// What comes before the music: parts, titles, no date.
void check_head(const XMLElement& root, Complaints& complaints);

}  // namespace fretsheaf::exchange::test
