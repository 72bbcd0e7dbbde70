#pragma once

namespace fretsheaf::fretboard {

// What a fingering costs, beyond what it must keep to: one weighted sum of whole numbers, the heaviest first.
struct FingeringWeights {
  // A hand has four fingers (one barre lies across any strings that no lower note and no open string interrupts): a
  // chord that needs more is moved to other strings, if that helps, unless the original needed as many.
  int finger_too_many = 100000;

  // The shape of the original kept: a student who learned it in one key knows it in the next.
  int other_string = 10000;   // each struck note that lies on another string than it did
  int other_distance = 6000;  // each struck note whose distance (strings and frets) from the note before, or from its
                              // neighbour in the chord, is not what it was

  // Little hand travel, in the time there is: per mm, times how often the time for the move goes into a second (1 to
  // 16). A stopped note leaves the last quarter of its length to move in, an open one, a dead one or a rest all of it:
  // an open string is where a hand jumps. To leave a position at all, to look and to aim, counts as so many mm.
  int travel = 1;
  int aim_millimetres = 20;

  // Fingers lie a fret each and within the easy reach; beyond either is a strain while it lasts (per event).
  int stretch = 10;             // per mm beyond the easy reach
  int beyond_four_frets = 100;  // per fret

  // Open strings as the original used them: they ring differently and cannot be bent or damped by the finger.
  int other_openness = 250;  // each struck note that was open and is stopped, or the other way round

  // A natural harmonic sounds the fainter the higher its partial is.
  int faint_harmonic = 200;  // per semitone above the string's octave

  // Low on the neck as the original was, or low at all: bigger frets are easier to find, and read.
  int height = 20;  // per fret above the original's (without one, above the open string), each struck note

  // The plucking hand would rather stay on its string; a thumb waits at a short string, which is no change.
  int string_change = 60;  // per string between one event's first struck note and the next one's
};

inline constexpr FingeringWeights fingering_weights;

}  // namespace fretsheaf::fretboard
