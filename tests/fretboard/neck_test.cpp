#include "fretboard/neck.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "fretboard/instrument.h"

using namespace fretsheaf;
using namespace fretsheaf::fretboard;

namespace {

Neck neck_of(const char* name, int capo = 0) {
  const Instrument& instrument = *find_instrument(name);
  return {instrument.tuning, instrument.frets, capo, instrument.short_fifth_string};
}

std::vector<Place> all_places(const Neck& neck) {
  std::vector<Place> places;
  for (int string = 1; string <= neck.strings(); ++string) {
    for (int fret = 0; fret <= neck.frets; ++fret) {
      if (neck.has({string, fret})) places.push_back({string, fret});
    }
  }
  return places;
}

int midi(const char* pitch) {
  return theory::parse_pitch(pitch).value().midi();
}

}  // namespace

TEST_CASE("Places on a four-string bass") {
  // Common practice: A string 5th fret is D, D string 4th F#, D string 7th A, E string 3rd G, A string 4th C#, G string
  // 4th B. Strings from 1, the highest (as MusicXML 4.0 counts them).
  const Neck bass = neck_of("bass");
  CHECK(bass.midi({3, 5}) == midi("D2"));
  CHECK(bass.midi({2, 4}) == midi("F#2"));
  CHECK(bass.midi({2, 7}) == midi("A2"));
  CHECK(bass.midi({4, 3}) == midi("G1"));
  CHECK(bass.midi({3, 4}) == midi("C#2"));
  CHECK(bass.midi({1, 4}) == midi("B2"));
  CHECK(bass.midi({4, 0}) == midi("E1"));
  CHECK(bass.open_pitch(1).to_string() == "G2");
  CHECK(bass.open_pitch(4).to_string() == "E1");
}

TEST_CASE("A 24-fret bass has 100 places, 40 pitches and C3 in four places") {
  // Computed apart from this program.
  const Neck bass = neck_of("bass");
  const std::vector<Place> places = all_places(bass);
  CHECK(places.size() == 100);
  std::map<int, int> places_of_pitch;
  for (const Place& place : places) ++places_of_pitch[bass.midi(place)];
  CHECK(places_of_pitch.size() == 40);
  CHECK(places_of_pitch[midi("C3")] == 4);
}

TEST_CASE("With a capo frets are counted from it") {
  // MusicXML 4.0: pitch = tuning + capo + fret.
  const Neck guitar = neck_of("guitar", 3);
  CHECK(guitar.midi({6, 0}) == midi("G2"));
  CHECK(guitar.midi({1, 2}) == midi("A4"));
  CHECK(guitar.last_fret() == 21);
  CHECK(guitar.has({1, 21}));
  CHECK_FALSE(guitar.has({1, 22}));
}

TEST_CASE("Places beyond the neck are none") {
  const Neck ukulele = neck_of("ukulele");
  CHECK(ukulele.has({4, 15}));
  CHECK_FALSE(ukulele.has({4, 16}));
  CHECK_FALSE(ukulele.has({5, 0}));
  CHECK_FALSE(ukulele.has({0, 0}));
  CHECK_FALSE(ukulele.has({1, -1}));
}

TEST_CASE("A banjo's short fifth string has open, then 6 and up") {
  // The lesson format; common practice: its sixth fret is one fret above the open string.
  const Neck banjo = neck_of("banjo");
  CHECK(banjo.is_short(5));
  CHECK_FALSE(banjo.is_short(4));
  CHECK(banjo.has({5, 0}));
  for (int fret = 1; fret <= 5; ++fret) CHECK_FALSE(banjo.has({5, fret}));
  CHECK(banjo.has({5, 6}));
  CHECK(banjo.has({5, 22}));
  CHECK_FALSE(banjo.has({5, 23}));
  CHECK(banjo.midi({5, 0}) == midi("G4"));
  CHECK(banjo.midi({5, 6}) == midi("G#4"));
  CHECK(banjo.midi({5, 7}) == midi("A4"));
  CHECK(banjo.midi({4, 5}) == midi("G3"));
  CHECK(banjo.has({4, 3}));
}

TEST_CASE("With a capo a banjo's short string sounds its tuning + capo + fret - 5") {
  const Neck banjo = neck_of("banjo", 2);
  CHECK(banjo.midi({5, 7}) == midi("G4") + 2 + 7 - 5);
  CHECK(banjo.midi({5, 0}) == midi("A4"));  // retuned with the capo (common practice)
  CHECK(banjo.has({5, 20}));
  CHECK_FALSE(banjo.has({5, 21}));
}

TEST_CASE("The tenor banjo and others have no short string") {
  for (const Instrument& instrument : instruments()) {
    const Neck neck{instrument.tuning, instrument.frets, 0, instrument.short_fifth_string};
    CHECK(neck.is_short(neck.strings()) == (instrument.name == "banjo"));
    CHECK_FALSE(neck.is_short(1));
  }
}

TEST_CASE("Natural harmonics are the string's partials") {
  // Common practice: over the 12th fret the octave, the 7th and 19th an octave and a fifth, the 5th and 24th two
  // octaves, the 4th, 9th and 16th two octaves and a major third, the 3rd two octaves and a fifth.
  const Neck guitar = neck_of("guitar");
  const std::vector<std::pair<int, const char*>> on_low_e = {{12, "E3"}, {7, "B3"},  {19, "B3"},  {5, "E4"}, {24, "E4"},
                                                             {4, "G#4"}, {9, "G#4"}, {16, "G#4"}, {3, "B4"}};
  for (const auto& [fret, pitch] : on_low_e) {
    CAPTURE(fret);
    CHECK(guitar.harmonic_midi({6, fret}) == midi(pitch));
  }
  for (const int fret : {0, 1, 2, 6, 8, 10, 11, 13, 14, 15, 17, 18, 20, 21, 22, 23}) {
    CAPTURE(fret);
    CHECK_FALSE(guitar.harmonic_midi({6, fret}));
  }
}

TEST_CASE("Every harmonic's fret is the nearest to a node of its partial") {
  // A fret n lies L(1 - 2^(-n/12)) from the nut; partial p has its nodes at k/p of L; it sounds 12 log2 p above.
  const Neck neck{neck_of("bass").tuning, 36, 0, false};
  int found = 0;
  for (int fret = 1; fret <= 36; ++fret) {
    const std::optional<int> sounding = neck.harmonic_midi({1, fret});
    if (!sounding) continue;
    ++found;
    const int semitones = *sounding - neck.midi({1, 0});
    const int partial = static_cast<int>(std::lround(std::exp2(semitones / 12.0)));
    CAPTURE(fret, partial);
    CHECK(std::lround(12 * std::log2(partial)) == semitones);
    bool at_a_node = false;
    for (int part = 1; part < partial; ++part) {
      const double node = -12 * std::log2(1 - static_cast<double>(part) / partial);  // in frets
      at_a_node = at_a_node || std::lround(node) == fret;
    }
    CHECK(at_a_node);
  }
  CHECK(found == 11);
}

TEST_CASE("Harmonics are counted from the capo and a short string's own nut") {
  CHECK(neck_of("guitar", 2).harmonic_midi({6, 12}) == midi("F#3"));
  const Neck banjo = neck_of("banjo");
  CHECK(banjo.harmonic_midi({5, 17}) == midi("G5"));
  CHECK(banjo.harmonic_midi({5, 12}) == midi("D6"));
  CHECK_FALSE(banjo.harmonic_midi({5, 5}));
}
