#include "fretboard/neck.h"

#include <algorithm>
#include <array>

namespace fretsheaf::fretboard {

namespace {

// A string touched at a node divides into equal parts; the semitones are those of the partial above the open string,
// rounded to equal temperament (the 5th partial is 14 cents flat). Frets nearest the nodes: common practice.
struct Node {
  int fret;
  int semitones;
};

constexpr std::array<Node, 11> nodes = {
    {{3, 31}, {4, 28}, {5, 24}, {7, 19}, {9, 28}, {12, 12}, {16, 28}, {19, 19}, {24, 24}, {28, 28}, {31, 31}}};

}  // namespace

int Neck::midi(Place place) const {
  const int above_open = place.fret > 0 ? place.fret - nut(place.string) : 0;
  return open_pitch(place.string).midi() + capo + above_open;
}

bool Neck::has(Place place) const {
  if (place.string < 1 || place.string > strings() || place.fret < 0 || place.fret > last_fret()) return false;
  return !is_short(place.string) || place.fret == 0 || place.fret > nut(place.string);
}

std::optional<int> Neck::harmonic_midi(Place place) const {
  const auto* const node = std::ranges::find(nodes, place.fret - nut(place.string), &Node::fret);
  if (node == nodes.end()) return std::nullopt;
  return midi({place.string, 0}) + node->semitones;
}

int Neck::sounding_midi(Place place, bool harmonic) const {
  return harmonic ? harmonic_midi(place).value_or(midi(place)) : midi(place);
}

}  // namespace fretsheaf::fretboard
