#pragma once

#include <vector>

#include "lesson/lesson.h"
#include "score/harmony.h"
#include "score/score.h"
#include "score/spelled_notes.h"
#include "score/written_bar.h"

namespace fretsheaf::score {

// Fills the written symbols of an example, bar by bar in order, with what is played: notes, ties, signs, labels.
class SymbolWriter {
 public:
  SymbolWriter(const lesson::Example& example, const Harmony& harmony, const SpelledNotes& notes, const Naming& naming)
      : example_(example), harmony_(harmony), notes_(notes), naming_(naming) {}

  // Appends to `bars.back()`; ties reach back into what was written before.
  void write(std::size_t bar_index, const WrittenBar& written, std::vector<Bar>& bars);

 private:
  Event symbol_of(const Symbol& symbol, const lesson::Event& source, const lesson::Bar& bar,
                  const std::optional<theory::Chord>& chord) const;
  Note note_of(const lesson::Note& note, const lesson::Event& source, bool first) const;

  const lesson::Example& example_;
  const Harmony& harmony_;
  const SpelledNotes& notes_;
  Naming naming_;
};

}  // namespace fretsheaf::score
