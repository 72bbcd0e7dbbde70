#include "exchange/adopt_spellings.h"

#include <algorithm>
#include <cstdlib>
#include <vector>

#include "score/harmony.h"
#include "score/spelled_notes.h"

namespace fretsheaf::exchange {

namespace {

class SpellingForcer {
 public:
  SpellingForcer(const WantedNames& names, const score::SpelledNotes& spelled, std::vector<lesson::Bar>& bars)
      : names_(names), spelled_(spelled), bars_(bars) {}

  void run() {
    for (std::size_t b = 0; b < bars_.size(); ++b) {
      if (bars_[b].same_as_previous) continue;
      for (std::size_t e = 0; e < bars_[b].events.size(); ++e) force(b, e);
    }
  }

 private:
  // The document's name for a note, where it is one of its sound that can be written; else the lesson's own.
  theory::NoteName wanted(std::size_t b, std::size_t e, const lesson::Note& note) const {
    const theory::NoteName own = spelled_.of(note).name;
    const auto found = names_.find({static_cast<int>(b), static_cast<int>(e), note.place.string});
    if (found == names_.end() || found->second.pitch_class() != own.pitch_class()) return own;
    return std::abs(found->second.alteration) <= 2 ? found->second : own;
  }

  void force(std::size_t b, std::size_t e) {
    lesson::Event& event = bars_[b].events[e];
    const bool dead = std::any_of(event.notes.begin(), event.notes.end(), [](const auto& note) { return note.dead; });
    if (event.kind != lesson::EventKind::struck || dead) return;
    bool other = false;
    for (std::size_t f = b; f < bars_.size() && (f == b || bars_[f].same_as_previous); ++f) {
      for (const lesson::Note& note : bars_[f].events[e].notes) {
        other = other || (!note.held && !(wanted(f, e, note) == spelled_.of(note).name));
      }
    }
    if (!other) return;
    for (lesson::Note& note : event.notes) {
      if (!note.held) note.spell = lesson::Located<theory::NoteName>{wanted(b, e, note), {}};
    }
    for (std::size_t f = b + 1; f < bars_.size() && bars_[f].same_as_previous; ++f) {
      for (std::size_t n = 0; n < event.notes.size(); ++n) {
        const auto& forced = event.notes[n].spell;
        if (forced && !(wanted(f, e, bars_[f].events[e].notes[n]) == forced->value)) bars_[f].same_as_previous = false;
      }
    }
  }

  const WantedNames& names_;
  const score::SpelledNotes& spelled_;
  std::vector<lesson::Bar>& bars_;
};

}  // namespace

void force_spellings(const WantedNames& names, const fretboard::Neck& neck, lesson::Example& example) {
  const score::Harmony harmony(example, neck.capo);
  const score::SpelledNotes spelled(example, neck, harmony);
  SpellingForcer(names, spelled, example.music.bars).run();
}

}  // namespace fretsheaf::exchange
