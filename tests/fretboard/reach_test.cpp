#include "fretboard/reach.h"

#include <catch2/catch.hpp>

#include "fretboard/lines.h"

using namespace fretsheaf::fretboard;

TEST_CASE("Frets of a 34-inch scale lie where equal temperament puts them") {
  // L (1 - 2^(-n/12)), 863.6 mm: computed.
  CHECK(fret_distance(863.6, 0) == 0);
  CHECK(fret_distance(863.6, 1) == Approx(48.47).margin(0.005));
  CHECK(fret_distance(863.6, 5) == Approx(216.63).margin(0.005));
  CHECK(fret_distance(863.6, 12) == Approx(431.8).margin(0.005));
}

TEST_CASE("The most reach is frets 1 to 4 of a bass and 1 to 5 of a guitar") {
  const auto span = [](const char* name, int low, int high) {
    const Played on = instrument(name);
    return fret_position(on.neck, on.scale_length, high) - fret_position(on.neck, on.scale_length, low);
  };
  CHECK(span("bass", 1, 4) == Approx(129.7).margin(0.05));
  CHECK(span("guitar", 1, 5) == Approx(126.1).margin(0.05));
  CHECK(span("bass", 1, 4) <= most_reach);
  CHECK(span("bass", 1, 5) > most_reach);
}

TEST_CASE("A capo does not move the frets") {
  const Played on = instrument("guitar", 5);
  CHECK(fret_position(on.neck, on.scale_length, 7) == Approx(fret_distance(on.scale_length, 12)));
}
