#pragma once

#include <string>

#include "fretboard/fingering.h"
#include "lesson/lesson.h"
#include "source/diagnostic.h"
#include "theory/key.h"
#include "transposition/playing_line.h"

namespace fretsheaf::transposition {

// What a lesson was asked for.
struct Wish {
  std::string where;  // "in E dorian", "on the ukulele"
  std::string help;   // what else may be asked for: "leave this key out"
};

struct MissedNote {
  const lesson::Example& example;  // where it lay
  const PlayingLine& line;         // what was looked for
  const fretboard::UnplayableNote& missed;
  const fretboard::Neck& neck;  // where it should lie
  theory::Key key;              // what the example would be in
  Wish wish;
};

// The error at the note that has no place: which bar, which note, and the limit that it meets.
void report_missed(const MissedNote& note, source::Diagnostics& diagnostics);

// The error where the joints of an event cannot be kept.
void report_broken(const lesson::Example& example, EventIndex index, const Wish& wish,
                   source::Diagnostics& diagnostics);

}  // namespace fretsheaf::transposition
