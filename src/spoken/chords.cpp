#include "spoken/chords.h"

#include "score/naming.h"

namespace fretsheaf::spoken {
namespace {

// The patterns of the kinds stand in the order of theory::ChordKind.
Sentence pattern_of(theory::ChordKind kind) {
  static_assert(static_cast<int>(Sentence::chord_minor_thirteenth) - static_cast<int>(Sentence::chord_major) ==
                static_cast<int>(theory::ChordKind::minor_thirteenth));
  return static_cast<Sentence>(static_cast<int>(Sentence::chord_major) + static_cast<int>(kind));
}

std::string root(theory::NoteName name, const Phrases& phrases) {
  return phrases.plain(score::chord_root(name, phrases.score().naming));
}

}  // namespace

std::string chord_name(const theory::Chord& chord, const Phrases& phrases) {
  std::string name = phrases(pattern_of(chord.kind), {{"root", root(chord.root, phrases)}});
  for (const theory::Degree& degree : chord.alterations) {
    name += ' ';
    name += phrases.degree(degree.to_string());
  }
  if (!chord.bass) return name;
  return phrases(Sentence::chord_over, {{"chord", name}, {"bass", root(*chord.bass, phrases)}});
}

std::string chord_said(const score::ChordMark& mark, const Phrases& phrases) {
  if (!mark.chord) return std::string(phrases[Sentence::no_chord]);
  const std::string name = chord_name(*mark.chord, phrases);
  if (!mark.fingered) return phrases(Sentence::chord, {{"chord", name}});
  return phrases(Sentence::chord_shape, {{"chord", name}, {"shape", chord_name(*mark.fingered, phrases)}});
}

}  // namespace fretsheaf::spoken
