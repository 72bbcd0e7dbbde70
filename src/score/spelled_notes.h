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

  // REQUIRES: the note is one of that example's.
  theory::Pitch of(const lesson::Note& note) const { return notes_.at(&note); }
  theory::Pitch of(const lesson::GraceNote& grace) const { return graces_.at(&grace); }

 private:
  static theory::Pitch spell(const lesson::Note& note, int midi, const fretboard::Neck& neck,
                             const theory::SpellingContext& context, std::optional<theory::Pitch> before);
  void spell_graces(const lesson::Note& note, int midi, const fretboard::Neck& neck, theory::SpellingContext context);

  std::unordered_map<const lesson::Note*, theory::Pitch> notes_;
  std::unordered_map<const lesson::GraceNote*, theory::Pitch> graces_;
};

}  // namespace fretsheaf::score
