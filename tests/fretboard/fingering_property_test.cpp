#include <catch2/catch.hpp>

#include "fretboard/fingering_oracle.h"
#include "fretboard/fingering_random.h"

using namespace fretsheaf::fretboard;

namespace {

// The places of the originals, as many frets up as the line is shifted.
std::optional<Fingering> plain_shift(const Line& line, const Played& on, const Fingering& found) {
  Fingering shifted;
  shifted.hands = found.hands;
  for (std::size_t e = 0; e < line.events.size(); ++e) {
    std::vector<PlacedNote>& notes = shifted.events.emplace_back();
    int low = 99;
    for (const NoteToPlace& note : line.events[e].notes) {
      Place place = *note.original;
      const int up = note.midi - on.neck.midi(place);
      if (up != 0) place.fret = on.neck.level(place) + up;
      if (!on.neck.has(place)) return std::nullopt;
      if (place.fret > 0) low = std::min(low, place.fret);
      notes.push_back({place, {}});
    }
    if (low < 99) shifted.hands[e] = low;
  }
  return shifted;
}

std::vector<std::vector<PlacedNote>> slice(const Fingering& fingering, std::size_t from, std::size_t count) {
  const auto begin = fingering.events.begin() + static_cast<std::ptrdiff_t>(from);
  return {begin, begin + static_cast<std::ptrdiff_t>(count)};
}

}  // namespace

TEST_CASE("Every rule holds in long lines, and the sum is what it says") {
  RandomLines random(20);
  int playable = 0;
  for (int i = 0; i < 400; ++i) {
    const Played on = random.instrument();
    const Line line = random.line(on.neck, {30, 1 + i % 4, i % 3 != 0, i % 2 == 0, 3});
    const Fingering fingering = find_fingering(line, on.neck, on.scale_length);
    if (!fingering.unplayable.empty()) continue;
    ++playable;
    CAPTURE(i, text(on.neck, fingering), describe(line, on));
    REQUIRE(cost_of(line, fingering, on) == fingering.cost);
  }
  CHECK(playable > 100);
}

TEST_CASE("The same line always gets the same fingering") {
  RandomLines random(21);
  for (int i = 0; i < 100; ++i) {
    const Played on = random.instrument();
    const Line line = random.line(on.neck, {20, 3, i % 2 == 0, true, 3});
    const Line copy = line;
    REQUIRE(find_fingering(line, on.neck, on.scale_length) == find_fingering(copy, on.neck, on.scale_length));
  }
}

TEST_CASE("Of two strings in unison the lower line is taken") {
  Played on = instrument("mandolin");
  on.neck.tuning[2] = on.neck.tuning[1];
  CHECK(text(on.neck, find_fingering(free_line(on.neck, "D4 E4 D4"), on.neck, on.scale_length)) == "D0 D2 D0");
}

TEST_CASE("A line that does not move stays where it was") {
  RandomLines random(22);
  for (int i = 0; i < 300; ++i) {
    const Played on = random.instrument();
    const Line line = random.line(on.neck, {24, 1 + i % 4, true, false, 0});
    const Fingering fingering = find_fingering(line, on.neck, on.scale_length);
    REQUIRE(fingering.unplayable.empty());
    const std::optional<Fingering> original = plain_shift(line, on, fingering);
    REQUIRE(original);
    REQUIRE(text(on.neck, fingering) == text(on.neck, *original));
  }
}

TEST_CASE("A plain shift along the neck is taken wherever it can be had") {
  RandomLines random(23);
  int shifted = 0;
  for (int i = 0; i < 600; ++i) {
    const Played on = random.instrument();
    const Line line = random.line(on.neck, {16, 1 + i % 3, true, false, 6});
    const Fingering fingering = find_fingering(line, on.neck, on.scale_length);
    if (!fingering.unplayable.empty()) continue;
    const std::optional<Fingering> plain = plain_shift(line, on, fingering);
    if (!plain || !cost_of(line, *plain, on)) continue;
    ++shifted;
    CAPTURE(i, describe(line, on));
    REQUIRE(text(on.neck, fingering) == text(on.neck, *plain));
  }
  CHECK(shifted > 150);
}

TEST_CASE("A passage that comes again is fingered as before") {
  RandomLines random(24);
  for (int i = 0; i < 100; ++i) {
    const Played on = random.instrument();
    const Line passage = random.line(on.neck, {8, 1 + i % 2, i % 3 != 0, false, 4});
    Line line = passage;
    constexpr std::size_t times = 6;
    for (std::size_t t = 1; t < times; ++t) {
      line.events.insert(line.events.end(), passage.events.begin(), passage.events.end());
    }
    const Fingering fingering = find_fingering(line, on.neck, on.scale_length);
    if (!fingering.unplayable.empty()) continue;
    // The first and last time the way in or out may make another fingering cheaper.
    const std::size_t size = passage.events.size();
    CAPTURE(i, text(on.neck, fingering));
    for (std::size_t t = 2; t + 1 < times; ++t)
      REQUIRE(slice(fingering, t * size, size) == slice(fingering, size, size));
  }
}

TEST_CASE("A moved chord keeps within a hand's reach") {
  // Frets at L (1 - 2^(-n/12)); all originals here lie within 130 mm, a tenth more is 143.
  RandomLines random(25);
  int chords = 0;
  for (int i = 0; i < 300; ++i) {
    const Played on = random.instrument();
    const Line line = random.line(on.neck, {4, 5, true, false, 6});
    for (const std::vector<PlacedNote>& event : find_fingering(line, on.neck, on.scale_length).events) {
      double low = 1e9;
      double high = 0;
      for (const PlacedNote& note : event) {
        if (note.place.fret == 0) continue;
        const double at = on.scale_length * (1 - std::pow(2, -(on.neck.capo + note.place.fret) / 12.0));
        low = std::min(low, at);
        high = std::max(high, at);
      }
      if (high > low) ++chords;
      CHECK((high <= low || high - low <= 143.001));
    }
  }
  CHECK(chords > 200);
}
