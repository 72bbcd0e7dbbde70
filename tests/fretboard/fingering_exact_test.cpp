#include <catch2/catch.hpp>

#include "fretboard/fingering_oracle.h"
#include "fretboard/fingering_random.h"

using namespace fretsheaf::fretboard;

namespace {

// Each line's fingering costs what the cheapest of all does, and what it says it costs.
void compare(unsigned seed, int lines, const RandomLines::Kind& kind) {
  RandomLines random(seed);
  int playable = 0;
  for (int i = 0; i < lines; ++i) {
    const Played on = random.instrument();
    const Line line = random.line(on.neck, kind);
    const Fingering fingering = find_fingering(line, on.neck, on.scale_length);
    const std::optional<std::int64_t> cheapest = cheapest_of_all(line, on);
    CAPTURE(seed, i, text(on.neck, fingering), cheapest.value_or(-1), describe(line, on));
    REQUIRE(fingering.unplayable.empty() == cheapest.has_value());
    if (!cheapest) continue;
    ++playable;
    REQUIRE(fingering.cost == *cheapest);
    REQUIRE(cost_of(line, fingering, on) == fingering.cost);
  }
  // Neither kind is missing.
  CHECK(playable > lines / 4);
  CHECK(playable < lines);
}

}  // namespace

TEST_CASE("Moved lines are fingered as cheaply as any") {
  compare(1, 1200, {3, 1, true, false, 7});
  compare(2, 200, {4, 1, true, false, 7});
}

TEST_CASE("Lines without an original, or with some, are fingered as cheaply as any") {
  compare(3, 1200, {3, 1, false, false, 7});
}

TEST_CASE("Chords are fingered as cheaply as any") {
  compare(4, 600, {2, 6, true, false, 7});
  compare(5, 600, {2, 6, false, false, 7});
  compare(6, 300, {3, 3, true, false, 4});
}

TEST_CASE("Joined, held, dead, grace and harmonic notes are fingered as cheaply as any") {
  compare(7, 1500, {3, 2, true, true, 4});
  compare(8, 300, {4, 1, true, true, 5});
  compare(9, 600, {3, 2, false, true, 4});
}
