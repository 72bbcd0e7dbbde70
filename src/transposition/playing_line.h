#pragma once

#include <cstddef>
#include <vector>

#include "fretboard/fingering.h"
#include "fretboard/neck.h"
#include "lesson/lesson.h"
#include "transposition/strings.h"

namespace fretsheaf::transposition {

// An event of an example's music, by indices.
struct EventIndex {
  std::size_t bar = 0;
  std::size_t event = 0;
};

// An example's music as the search for places takes it. Bars written `%` are left out, because they are played as the
// bar before is.
struct PlayingLine {
  fretboard::Line line;
  std::vector<EventIndex> events;  // which event of the music each of the line's is
};

struct LineWish {
  const fretboard::Neck& neck;  // where the notes lie now
  const StringsThere& strings;  // which of the neck that they move to take the part of its own
  int semitones = 0;            // how far they move
};

PlayingLine playing_line(const lesson::Example& example, const LineWish& wish);

}  // namespace fretsheaf::transposition
