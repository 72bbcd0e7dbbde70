#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "lesson/lesson.h"
#include "source/diagnostic.h"
#include "theory/chord.h"
#include "theory/key.h"
#include "theory/rational.h"

namespace fretsheaf::transposition {

// Where a lesson is to go. `key` is what sounds. A capo without a key leaves the hand's shapes as they are, so that
// what sounds moves by it.
struct Destination {
  std::optional<theory::Key> key;                     // of the lesson's mode, with a signature
  const fretboard::Instrument* instrument = nullptr;  // another one than the lesson's
  std::optional<int> capo;                            // in place of the lesson's
};

// A struck note that does not lie where its example's interval would put it on its own string.
struct MovedNote {
  int bar = 1;          // as printed
  theory::Rational at;  // from the full bar's start
  fretboard::Place from;
  fretboard::Place to;
};

// What came of one example.
struct ExampleReport {
  int semitones = 0;                        // how far its notes moved
  std::vector<MovedNote> moved;             // on the lesson's own strings only; empty on another instrument
  std::vector<int> bars_without_fingers;    // whose written fingers do not fit any more
  std::vector<theory::Chord> boxes_afresh;  // whose given shape cannot move: one is worked out in its place
};

struct Moved {
  lesson::Lesson lesson;
  std::vector<ExampleReport> examples;
};

// Why a capo cannot stand there: it is past the neck, or the lesson's frets reach past what it leaves. nullopt where it
// can. Of a lesson that moves to a key as well only the first is asked.
std::optional<std::string> refuse_capo(const lesson::Lesson& lesson, const Destination& to);

// The key that sounds there; under a capo alone the one of that sound with the fewest signs.
theory::Key key_there(const lesson::Lesson& lesson, const Destination& to);

// The lesson there. All of it moves by one interval, the nearest to the new tonic (down at a tritone) at which every
// example can be played; where there is none, each example by its own. Notes are never moved one by one. An example
// that can be played at no interval is an error at the note that has no place, and nothing is returned. Written fingers
// that no longer fit are dropped with a warning. REQUIRES: the lesson was read without errors; refuse_capo() found
// nothing.
std::optional<Moved> move(const lesson::Lesson& lesson, const Destination& to, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::transposition
