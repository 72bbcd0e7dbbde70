#pragma once

#include <optional>
#include <vector>

#include "fretboard/fingering.h"
#include "fretboard/neck.h"
#include "lesson/music.h"
#include "transposition/playing_line.h"

namespace fretsheaf::transposition {

// Where each note of an example's music is played: by bar, event, and note as the event has them.
using Places = std::vector<std::vector<std::vector<fretboard::PlacedNote>>>;

// The places as they are.
Places places_of(const lesson::Music& music);

// What the search found, for all bars: one written `%` is played as the bar before, and what is held stays where it was
// struck.
Places places_found(const lesson::Music& music, const PlayingLine& line, const fretboard::Fingering& found);

// Every note as many frets up its own string; nullopt where the neck does not reach that far, or an open string or a
// harmonic cannot go along. REQUIRES: frets != 0.
std::optional<Places> places_along_strings(const lesson::Music& music, const fretboard::Neck& neck, int frets);

// Puts the notes there, each event's in the order of the strings.
void place(lesson::Music& music, const Places& places);

// A struck note, by where it lies.
struct LyingNote {
  EventIndex event;
  int string = 1;
};

// The first note that does not lie as a reader of the grid needs it: a hammer-on, pull-off or slide must lead up or
// down from the note before on its string, and a slide from nowhere have none there.
std::optional<LyingNote> broken_joint(const lesson::Music& music);

}  // namespace fretsheaf::transposition
