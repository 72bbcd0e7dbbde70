#pragma once

namespace fretsheaf::fretboard {

// What a fingering costs, beyond what it must keep to: one weighted sum of whole numbers, the heaviest first.
struct FingeringWeights {
  // The shape of the original kept: a student who learned it in one key knows it in the next.
  int other_string = 10000;   // each struck note that lies on another string than it did
  int other_distance = 6000;  // each struck note whose distance (strings and frets) from the note before, or from its
                              // neighbour in the chord, is not what it was

  // A hand has four fingers; a shape that needs a fifth (one barre lies across any strings that no lower note and no
  // open string interrupts) is arpeggiated at best.
  int finger_beyond_four = 5000;

  // Little hand travel, in the time there is: per mm, times how often the time for the move goes into a second (1 to
  // 16). A stopped note leaves the last quarter of its length to move in, an open one, a dead one or a rest all of it:
  // an open string is where a hand jumps. Leaving a position at all costs a look and an aim.
  int travel = 1;
  int shift = 300;

  // Fingers lie a fret each and within the easy reach; beyond either is a strain while it lasts (per event).
  int stretch = 10;             // per mm beyond the easy reach
  int beyond_four_frets = 100;  // per fret

  // Open strings as the original used them: they ring differently and cannot be bent or damped by the finger.
  int other_openness = 250;  // each struck note that was open and is stopped, or the other way round

  // Low on the neck as the original was, or low at all: bigger frets are easier to find, and read.
  int height = 10;  // per fret above the original's (without one, above the open string), each struck note

  // Of what is left, the plucking hand would rather stay on its string.
  int string_change = 2;  // per string between one event's first struck note and the next one's
};

inline constexpr FingeringWeights fingering_weights;

}  // namespace fretsheaf::fretboard
