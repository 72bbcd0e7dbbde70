#include "fretboard/instrument.h"

#include <algorithm>

namespace fretsheaf::fretboard {

namespace {

// REQUIRES: each a pitch.
std::vector<theory::Pitch> tuning(std::initializer_list<std::string_view> pitches) {
  std::vector<theory::Pitch> result;
  for (const std::string_view pitch : pitches) result.push_back(theory::parse_pitch(pitch).value());
  return result;
}

std::vector<Instrument> all_instruments() {
  return {
      {"bass", tuning({"E1", "A1", "D2", "G2"}), 24, 863.6, Clef::bass, true, false},
      {"bass-5", tuning({"B0", "E1", "A1", "D2", "G2"}), 24, 863.6, Clef::bass, true, false},
      {"bass-6", tuning({"B0", "E1", "A1", "D2", "G2", "C3"}), 24, 863.6, Clef::bass, true, false},
      {"guitar", tuning({"E2", "A2", "D3", "G3", "B3", "E4"}), 24, 647.7, Clef::treble, true, false},
      {"guitar-7", tuning({"B1", "E2", "A2", "D3", "G3", "B3", "E4"}), 24, 647.7, Clef::treble, true, false},
      {"ukulele", tuning({"G4", "C4", "E4", "A4"}), 15, 381, Clef::treble, false, false},
      {"baritone-ukulele", tuning({"D3", "G3", "B3", "E4"}), 15, 510, Clef::treble, true, false},
      {"mandolin", tuning({"G3", "D4", "A4", "E5"}), 20, 352, Clef::treble, false, false},
      {"banjo", tuning({"G4", "D3", "G3", "B3", "D4"}), 22, 667, Clef::treble, true, true},
      {"tenor-banjo", tuning({"C3", "G3", "D4", "A4"}), 19, 584, Clef::treble, true, false},
  };
}

}  // namespace

std::span<const Instrument> instruments() {
  static const std::vector<Instrument> all = all_instruments();
  return all;
}

const Instrument* find_instrument(std::string_view name) {
  const std::span<const Instrument> all = instruments();
  const auto found = std::ranges::find(all, name, &Instrument::name);
  return found == all.end() ? nullptr : &*found;
}

std::vector<std::string_view> instrument_names() {
  std::vector<std::string_view> names;
  for (const Instrument& instrument : instruments()) names.push_back(instrument.name);
  return names;
}

}  // namespace fretsheaf::fretboard
