#pragma once

#include <vector>

#include "score/score.h"

// Where the heads of the notes staff stand and which way their stems point: what is decided before anything is spaced.
namespace fretsheaf::layout {

// Places on the staff count in steps up from its middle line, two to a space: 4 is the top line, 6 the first ledger
// line above it.
struct StaffHead {
  const score::Note* note = nullptr;
  int step = 0;
  bool displaced = false;  // on the stem's other side, next to a head a second or less away
};

// What one symbol has on the staff. No heads: a rest.
struct StaffChord {
  bool up = false;               // where the stem points (or would point)
  std::vector<StaffHead> heads;  // from the lowest up

  int lowest() const { return heads.front().step; }
  int highest() const { return heads.back().step; }
  // The head that the stem begins at, and the one that it ends nearest to.
  int foot() const { return up ? lowest() : highest(); }
  int near_tip() const { return up ? highest() : lowest(); }
};

// By bar and event.
using StaffChords = std::vector<std::vector<StaffChord>>;

int staff_step(theory::Pitch written, fretboard::Clef clef);

//  - Stems point toward the middle line: the head farthest from it decides, for all notes of a beam; down where both
//    sides are as far, and for the middle line itself (Gould, Behind Bars, 2011, pp. 14, 24, 47, from memory).
//  - Of two heads a second apart the upper stands right of the stem, the lower left of it (common practice).
// Keeps pointers into the example.
StaffChords staff_chords(const score::Example& example, fretboard::Clef clef);

}  // namespace fretsheaf::layout
