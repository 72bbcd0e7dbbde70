#include "theory/interval.h"

#include <catch2/catch.hpp>
#include <tuple>
#include <vector>

using namespace fretsheaf::theory;

namespace {

NoteName name(const char* text) {
  return parse_note_name(text).value();
}
Pitch pitch(const char* text) {
  return parse_pitch(text).value();
}

}  // namespace

TEST_CASE("Transposing keeps the spelling of the interval") {
  // C#4 up a major third is E#4 (checked elsewhere with the library tonal); the rest is common practice.
  const std::vector<std::tuple<const char*, Interval, const char*>> moves = {
      {"C#4", {2, 4}, "E#4"}, {"C4", {2, 3}, "Eb4"},  {"B3", {1, 1}, "C4"},  {"B3", {1, 2}, "C#4"},
      {"C4", {-1, -1}, "B3"}, {"Eb2", {4, 7}, "Bb2"}, {"F2", {3, 6}, "B2"},  {"E1", {-7, -12}, "E0"},
      {"D4", {6, 9}, "Cb5"},  {"Gb3", {3, 5}, "Cb4"}, {"G4", {9, 16}, "B5"}, {"C4", {0, 1}, "C#4"}};
  for (const auto& [from, by, to] : moves) {
    CAPTURE(from, to);
    CHECK(transposed(pitch(from), by).to_string() == to);
    CHECK(interval(pitch(from), pitch(to)) == by);
    CHECK(transposed(pitch(to), {-by.steps, -by.semitones}).to_string() == from);
  }
}

TEST_CASE("The interval between two names goes up within an octave") {
  CHECK(interval(name("C"), name("E")) == Interval{2, 4});
  CHECK(interval(name("A"), name("C")) == Interval{2, 3});
  CHECK(interval(name("D"), name("C")) == Interval{6, 10});
  CHECK(interval(name("B"), name("F")) == Interval{4, 6});
  CHECK(interval(name("F"), name("B")) == Interval{3, 6});
  CHECK(interval(name("C"), name("C")) == Interval{0, 0});
}

TEST_CASE("Transposing a name by the interval to another gives that other") {
  for (int from = -15; from <= 19; ++from) {
    for (int to = -15; to <= 19; ++to) {
      const NoteName first = note_name_from_fifths(from);
      const NoteName second = note_name_from_fifths(to);
      CHECK(transposed(first, interval(first, second)) == second);
    }
  }
}
