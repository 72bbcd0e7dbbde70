#include <catch2/catch.hpp>

#include "fretboard/lines.h"

using namespace fretsheaf::fretboard;

namespace {

std::string shifted(const char* name, const char* places, int up) {
  const Played on = instrument(name);
  return text(on.neck, find_fingering(shifted_line(on.neck, places, up), on.neck, on.scale_length));
}

}  // namespace

TEST_CASE("A line moves along the neck as it is where it can") {
  CHECK(shifted("bass", "A3 A5 D2 D3 D5 G2 G4 G5", 0) == "A3 A5 D2 D3 D5 G2 G4 G5");
  CHECK(shifted("bass", "A3 A5 D2 D3 D5 G2 G4 G5", 2) == "A5 A7 D4 D5 D7 G4 G6 G7");
  CHECK(shifted("bass", "A5 A3 E3 A3 r D5 E0", 3) == "A8 A6 E6 A6 r D8 E3");
  CHECK(shifted("guitar", "E3+A2+D0+G0+B0+e3", 2) == "E5+A4+D2+G2+B2+e5");
}

TEST_CASE("Notes that fall off a string go to the next, alone or with their phrase") {
  CHECK(shifted("bass", "A5 A5 A3 A0 A3 A5", -2) == "A3 A3 A1 E3 A1 A3");
  CHECK(shifted("bass", "A0 A0 A3 A0 A0", -2) == "E3 E3 E6 E3 E3");
}

TEST_CASE("A note below or above the neck is named") {
  CHECK(shifted("bass", "E3 A2 E1 E0", -1) == "3.0 too low");
  CHECK(shifted("bass", "G20 G24 r G23", 1) == "1.0 too high");
}
