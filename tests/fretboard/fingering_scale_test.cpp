#include <algorithm>
#include <catch2/catch.hpp>

#include "fretboard/lines.h"
#include "fretboard/places.h"

using namespace fretsheaf::fretboard;

namespace {

std::string free(const char* name, const char* pitches) {
  const Played on = instrument(name);
  return text(on.neck, find_fingering(free_line(on.neck, pitches), on.neck, on.scale_length));
}

const char* const c_major = "C2 D2 E2 F2 G2 A2 B2 C3";

// All ways to play the line on frets 1 to 20, one note after another.
void every_fingering(const Neck& neck, const Line& line, std::vector<Place>& so_far,
                     std::vector<std::vector<Place>>& found) {
  if (so_far.size() == line.events.size()) {
    found.push_back(so_far);
    return;
  }
  for (const Place place : places_of(neck, line.events[so_far.size()].notes.front().midi)) {
    if (place.fret < 1 || place.fret > 20) continue;
    so_far.push_back(place);
    every_fingering(neck, line, so_far, found);
    so_far.pop_back();
  }
}

}  // namespace

TEST_CASE("The C major scale on frets 1 to 20 of a bass has 6,912 fingerings, two of them within three frets") {
  // Computed apart from this program by enumeration.
  const Neck bass = instrument("bass").neck;
  std::vector<Place> none;
  std::vector<std::vector<Place>> found;
  every_fingering(bass, free_line(bass, c_major), none, found);
  CHECK(found.size() == 6912);
  std::vector<std::string> narrow;
  for (const std::vector<Place>& places : found) {
    const auto [low, high] = std::ranges::minmax_element(places, {}, &Place::fret);
    if (high->fret - low->fret > 3) continue;
    std::string& words = narrow.emplace_back();
    for (const Place place : places) words += text(bass, place) + " ";
  }
  std::ranges::sort(narrow);
  CHECK(narrow == std::vector<std::string>{"A3 A5 D2 D3 D5 G2 G4 G5 ", "E8 E10 A7 A8 A10 D7 D9 D10 "});
}

TEST_CASE("Without open strings the search takes the lower of the two") {
  const Played bass = instrument("bass");
  Line line = free_line(bass.neck, c_major);
  for (EventToPlace& event : line.events) event.notes.front().stopped = true;
  CHECK(text(bass.neck, find_fingering(line, bass.neck, bass.scale_length)) == "A3 A5 D2 D3 D5 G2 G4 G5");
}

TEST_CASE("Scales that have no original lie as beginners learn them") {
  // First-position fingerings: common practice.
  CHECK(free("guitar", "C3 D3 E3 F3 G3 A3 B3 C4 D4 E4 F4 G4") == "A3 D0 D2 D3 G0 G2 B0 B1 B3 e0 e1 e3");
  CHECK(free("guitar", "G2 A2 B2 C3 D3 E3 F#3 G3 A3 B3 C4 D4 E4 F#4 G4") ==
        "E3 A0 A2 A3 D0 D2 D4 G0 G2 B0 B1 B3 e0 e2 e3");
  CHECK(free("ukulele", "C4 D4 E4 F4 G4 A4 B4 C5") == "C0 C2 E0 E1 E3 A0 A2 A3");
  CHECK(free("mandolin", "G3 A3 B3 C4 D4 E4 F#4 G4 A4 B4 C5 D5 E5 F#5 G5") ==
        "G0 G2 G4 G5 D0 D2 D4 D5 A0 A2 A3 A5 E0 E2 E3");
  CHECK(free("tenor-banjo", "C3 D3 E3 F3 G3 A3 B3 C4") == "C0 C2 C4 C5 G0 G2 G4 G5");
  CHECK(free("bass", "F#1 G#1 A#1 B1 C#2 D#2 F2 F#2") == "E2 E4 A1 A2 A4 D1 D3 D4");
}

TEST_CASE("Open chords that have no original lie as beginners learn them") {
  // Common practice: C, G, Am, F.
  CHECK(free("guitar", "C3+E3+G3+C4+E4 G2+B2+D3+G3+B3+G4 A2+E3+A3+C4+E4 F2+C3+F3+A3+C4+F4") ==
        "A3+D2+G0+B1+e0 E3+A2+D0+G0+B0+e3 A0+D2+G2+B1+e0 E1+A3+D3+G2+B1+e1");
  CHECK(free("ukulele", "G4+C4+E4+C5 G4+D4+G4+B4 A4+C4+F4+A4") == "G0+C0+E0+A3 G0+C2+E3+A2 G2+C0+E1+A0");
}
