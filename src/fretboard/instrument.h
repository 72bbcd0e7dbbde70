#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "theory/pitch.h"

namespace fretsheaf::fretboard {

enum class Clef { bass, treble };

// A fretted instrument as the trade builds it (tunings and scale lengths: common practice).
struct Instrument {
  std::string_view name;              // as lesson files write it
  std::vector<theory::Pitch> tuning;  // sounding, the tab's bottom line first
  int frets = 24;
  double scale_length = 0;           // of the open strings, in mm
  Clef clef = Clef::treble;          // of its notes staff
  bool sounds_octave_lower = false;  // written an octave above what sounds
  bool short_fifth_string = false;   // the tab's bottom line starts at the fifth fret (banjo)
};

std::span<const Instrument> instruments();
const Instrument* find_instrument(std::string_view name);  // nullptr where there is none
std::vector<std::string_view> instrument_names();

}  // namespace fretsheaf::fretboard
