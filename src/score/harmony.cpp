#include "score/harmony.h"

#include "theory/arithmetic.h"
#include "theory/interval.h"

namespace fretsheaf::score {
namespace {

// A shape is called by a name that players know it by: no double sharp or flat, no E#, B#, Cb or Fb (common practice).
theory::NoteName name_of_shape(theory::NoteName root) {
  constexpr int highest = 10;  // A#; and Gb is -6
  constexpr int lowest = -6;
  if (root.fifths() > highest) return theory::note_name_from_fifths(root.fifths() - 12);
  if (root.fifths() < lowest) return theory::note_name_from_fifths(root.fifths() + 12);
  return root;
}

}  // namespace

theory::Key fingered_key(const theory::Key& key, int capo) {
  constexpr int most_fifths = 5;
  theory::Key shapes = key;
  // Seven fifths make a semitone; of the names of that sound one lies near the middle of the line.
  shapes.tonic =
      theory::note_name_from_fifths(theory::floor_mod(key.tonic.fifths() - 7 * capo + most_fifths, 12) - most_fifths);
  return theory::enharmonic_key(shapes);
}

theory::Chord fingered(const theory::Chord& chord, const theory::Key& key, int capo) {
  const theory::Interval way = theory::interval(key.tonic, fingered_key(key, capo).tonic);
  theory::Chord shape = chord;
  shape.root = name_of_shape(theory::transposed(chord.root, way));
  if (chord.bass) shape.bass = name_of_shape(theory::transposed(*chord.bass, way));
  return shape;
}

Harmony::Harmony(const lesson::Example& example, int capo) {
  std::optional<theory::Chord> current;
  for (const lesson::Bar& bar : example.music.bars) {
    at_start_.push_back(current);
    std::vector<ChordMark>& marks = marks_.emplace_back();
    for (const lesson::ChordMark& mark : bar.chords) {
      current = theory::resolve(mark.chord, example.key);
      marks.push_back({mark.at, current, {}});
      if (current && capo > 0) marks.back().fingered = fingered(*current, example.key, capo);
    }
  }
}

std::optional<theory::Chord> Harmony::in_force(std::size_t bar, Rational at) const {
  std::optional<theory::Chord> chord = at_start_[bar];
  for (const ChordMark& mark : marks_[bar]) {
    if (mark.at <= at) chord = mark.chord;
  }
  return chord;
}

}  // namespace fretsheaf::score
