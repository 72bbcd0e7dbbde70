#pragma once

#include <optional>
#include <unordered_map>
#include <vector>

#include "fretboard/neck.h"
#include "lesson/lesson.h"
#include "score/harmony.h"
#include "theory/pitch.h"
#include "theory/spelling.h"

namespace fretsheaf::score {

// What every note and grace note of one example sounds, spelled. Keyed by the lesson's own notes: use it only while the
// lesson lives and is not changed.
class SpelledNotes {
 public:
  SpelledNotes(const lesson::Example& example, const fretboard::Neck& neck, const Harmony& harmony);

  // As it is printed, up to a double accidental. REQUIRES: the note is one of that example's.
  theory::Pitch of(const lesson::Note& note) const { return practical(notes_.at(&note)); }
  // The name that degrees are counted from; it may have three accidentals.
  theory::NoteName exact(const lesson::Note& note) const { return notes_.at(&note).name; }
  theory::Pitch of(const lesson::GraceNote& grace) const { return practical(graces_.at(&grace)); }

  // The words of one note or chord that force its spelling, wherever it is played: `idle` where it would be spelled so
  // without them.
  struct Forced {
    lesson::Range range;
    bool idle = true;
  };
  const std::vector<Forced>& forced() const { return forced_; }

 private:
  static theory::Pitch practical(theory::Pitch exact) {
    return theory::pitch_of(theory::practical(exact.name), exact.midi());
  }
  static theory::Pitch spell(const lesson::Note& note, int midi, const fretboard::Neck& neck,
                             const theory::SpellingContext& context, std::optional<theory::Pitch> before);
  void spell_graces(const lesson::Note& note, int midi, const fretboard::Neck& neck, theory::SpellingContext context);

  std::unordered_map<const lesson::Note*, theory::Pitch> notes_;
  std::unordered_map<const lesson::GraceNote*, theory::Pitch> graces_;
  std::vector<Forced> forced_;
};

}  // namespace fretsheaf::score
