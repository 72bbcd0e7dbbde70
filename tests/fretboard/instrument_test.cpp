#include "fretboard/instrument.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace fretsheaf::fretboard;

namespace {

struct Expected {
  const char* name;
  std::vector<int> midi;  // the tab's bottom line first
  int frets;
  double scale_length;
  Clef clef;
  bool octave_lower;
};

// MIDI numbers, clefs and scale lengths: common practice. Frets: the lesson format's defaults. A bass's F clef sounds
// an octave lower: MusicXML 4.0, transpose with octave-change -1.
const std::vector<Expected> table = {{"bass", {28, 33, 38, 43}, 24, 863.6, Clef::bass, true},
                                     {"bass-5", {23, 28, 33, 38, 43}, 24, 863.6, Clef::bass, true},
                                     {"bass-6", {23, 28, 33, 38, 43, 48}, 24, 863.6, Clef::bass, true},
                                     {"guitar", {40, 45, 50, 55, 59, 64}, 24, 647.7, Clef::treble, true},
                                     {"guitar-7", {35, 40, 45, 50, 55, 59, 64}, 24, 647.7, Clef::treble, true},
                                     {"ukulele", {67, 60, 64, 69}, 15, 381, Clef::treble, false},
                                     {"baritone-ukulele", {50, 55, 59, 64}, 15, 510, Clef::treble, true},
                                     {"mandolin", {55, 62, 69, 76}, 20, 352, Clef::treble, false},
                                     {"banjo", {67, 50, 55, 59, 62}, 22, 667, Clef::treble, true},
                                     {"tenor-banjo", {48, 55, 62, 69}, 19, 584, Clef::treble, true}};

}  // namespace

TEST_CASE("The ten instruments of the lesson format") {
  REQUIRE(instruments().size() == table.size());
  for (const Expected& expected : table) {
    CAPTURE(expected.name);
    const Instrument* instrument = find_instrument(expected.name);
    REQUIRE(instrument != nullptr);
    std::vector<int> midi;
    for (const auto& pitch : instrument->tuning) midi.push_back(pitch.midi());
    CHECK(midi == expected.midi);
    CHECK(instrument->frets == expected.frets);
    CHECK(instrument->scale_length == expected.scale_length);
    CHECK(instrument->clef == expected.clef);
    CHECK(instrument->sounds_octave_lower == expected.octave_lower);
    CHECK(instrument->short_fifth_string == (std::string(expected.name) == "banjo"));
  }
}

TEST_CASE("Instruments are listed by name in the lesson format's order") {
  const std::vector<std::string_view> names = instrument_names();
  REQUIRE(names.size() == table.size());
  for (std::size_t index = 0; index < names.size(); ++index) CHECK(names[index] == table[index].name);
}

TEST_CASE("An unknown instrument is none") {
  CHECK(find_instrument("lute") == nullptr);
  CHECK(find_instrument("") == nullptr);
  CHECK(find_instrument("Bass") == nullptr);
}
