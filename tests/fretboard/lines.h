#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "fretboard/fingering.h"
#include "fretboard/instrument.h"

// Lines to finger, built and shown as a player says them: "A3" is the third fret of the string of that label.
namespace fretsheaf::fretboard {

struct Played {
  Neck neck;
  double scale_length = 0;
};

Played instrument(const char* name, int capo = 0);

// The place of "A3" on the neck.
Place at(const Neck& neck, const std::string& text);
std::string text(const Neck& neck, Place place);

// One note after another, each an eighth long; the pitches are those of the places, `up` semitones higher.
Line shifted_line(const Neck& neck, const std::string& places, int up);
// The same without an original.
Line free_line(const Neck& neck, const std::string& pitches);

// "A3 A5 D2", chords with a + between; the reasons where something is unplayable.
std::string text(const Neck& neck, const Fingering& fingering);

// The whole question, for a failing test to show.
std::string describe(const Line& line, const Played& on);

}  // namespace fretsheaf::fretboard
