#include "fretboard/fingers.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace fretsheaf::fretboard;

namespace {

// Frets bottom line first, as shapes are written; 0 sounds open, x does not sound.
int fingers(const std::string& shape) {
  std::vector<Place> places;
  int string = static_cast<int>(shape.size());
  for (const char fret : shape) {
    if (fret != 'x') places.push_back({string, fret - '0'});
    --string;
  }
  return fingers_needed(places);
}

}  // namespace

TEST_CASE("A finger a note, a barre over neighbours of one fret") {
  // The fingers that these shapes take: common practice.
  CHECK(fingers("x32010") == 3);
  CHECK(fingers("320003") == 3);
  CHECK(fingers("x21202") == 4);
  CHECK(fingers("000000") == 0);
  CHECK(fingers("xx0232") == 2);  // the second fret can be one barre under the third
  CHECK(fingers("133211") == 3);  // barres of the first and the third fret
  CHECK(fingers("x02220") == 1);
  CHECK(fingers("3211") == 3);
  CHECK(fingers("2222") == 1);
}

TEST_CASE("No barre lies across a lower or an open note") {
  CHECK(fingers("2020") == 2);
  CHECK(fingers("2120") == 3);
  CHECK(fingers("202") == 2);
  CHECK(fingers("2x2") == 1);
  CHECK(fingers("x32313") == 5);
}
