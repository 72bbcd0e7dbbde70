#pragma once

#include <optional>

#include "fretboard/fingering.h"
#include "fretboard/neck.h"
#include "lesson/lesson.h"
#include "transposition/placing.h"
#include "transposition/playing_line.h"

namespace fretsheaf::transposition {

// Where an example is tried.
struct TrialNecks {
  const fretboard::Neck& from;
  const fretboard::Neck& to;
  double scale_length = 0;  // of `to`, in mm
  bool stays = false;       // whether a place that does not move is the same place there
};

// An example tried at an interval: where its notes go, or what stands in the way.
struct Trial {
  int semitones = 0;
  std::optional<Places> places;
  PlayingLine line;                                   // what was looked for
  std::vector<fretboard::UnplayableNote> unplayable;  // empty where every note has a place
  std::optional<EventIndex> broken;                   // else, without places: whose joint cannot be kept
};

// REQUIRES: an example with strings and notes of its own.
Trial attempt(const lesson::Example& example, int semitones, const TrialNecks& necks);

}  // namespace fretsheaf::transposition
