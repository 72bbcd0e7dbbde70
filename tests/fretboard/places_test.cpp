#include "fretboard/places.h"

#include <catch2/catch.hpp>
#include <set>

#include "fretboard/lines.h"

using namespace fretsheaf::fretboard;

namespace {

int midi(const char* pitch) {
  return fretsheaf::theory::parse_pitch(pitch).value().midi();
}

}  // namespace

TEST_CASE("Every place of a pitch is found, on every instrument and with a capo") {
  for (const Instrument& each : instruments()) {
    for (const int capo : {0, 3}) {
      const Neck neck = instrument(std::string(each.name).c_str(), capo).neck;
      for (int pitch = 20; pitch < 110; ++pitch) {
        std::vector<Place> expected;
        std::vector<Place> harmonics;
        for (int string = 1; string <= neck.strings(); ++string) {
          for (int fret = 0; fret <= 40; ++fret) {
            if (!neck.has({string, fret})) continue;
            if (neck.midi({string, fret}) == pitch) expected.push_back({string, fret});
            if (neck.harmonic_midi({string, fret}) == pitch) harmonics.push_back({string, fret});
          }
        }
        CAPTURE(each.name, capo, pitch);
        REQUIRE(places_of(neck, pitch) == expected);
        REQUIRE(harmonic_places_of(neck, pitch) == harmonics);
      }
    }
  }
}

TEST_CASE("On 24 frets a four-string bass has 100 places, 40 pitches and C3 in four places") {
  // Computed apart from this program.
  const Neck bass = instrument("bass").neck;
  std::size_t places = 0;
  int pitches = 0;
  for (int pitch = 0; pitch < 128; ++pitch) {
    places += places_of(bass, pitch).size();
    if (!places_of(bass, pitch).empty()) ++pitches;
  }
  CHECK(places == 100);
  CHECK(pitches == 40);
  CHECK(places_of(bass, midi("C3")) == std::vector<Place>{{1, 5}, {2, 10}, {3, 15}, {4, 20}});
}

TEST_CASE("A banjo's short string has its open pitch, and frets from six") {
  const Neck banjo = instrument("banjo").neck;
  CHECK(fret_of(banjo, 5, midi("G4")) == 0);
  CHECK(fret_of(banjo, 5, midi("A4")) == 7);
  CHECK_FALSE(fret_of(banjo, 5, midi("F#4")));
  CHECK(banjo.level({5, 0}) == 5);
  CHECK(banjo.level({5, 7}) == 7);
  CHECK(banjo.level({4, 0}) == 0);
}

TEST_CASE("The lowest and the highest note of a neck, whatever string they are on") {
  const Neck guitar = instrument("guitar").neck;
  CHECK(lowest_midi(guitar) == midi("E2"));
  CHECK(highest_midi(guitar) == midi("E6"));
  const Neck ukulele = instrument("ukulele").neck;
  CHECK(lowest_midi(ukulele) == midi("C4"));
  CHECK(highest_midi(ukulele) == midi("C6"));
  CHECK(highest_midi(instrument("banjo").neck) == midi("C6"));
  // Four frets are left, of which a banjo's short string has none.
  CHECK(highest_midi(instrument("banjo", 18).neck) == midi("C#6"));
}
