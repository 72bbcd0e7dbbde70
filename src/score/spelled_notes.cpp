#include "score/spelled_notes.h"

#include <algorithm>
#include <cstdlib>
#include <optional>

#include "theory/arithmetic.h"
#include "theory/spelling.h"

namespace fretsheaf::score {
namespace {

int midi_of(const lesson::Note& note, const fretboard::Neck& neck) {
  return neck.sounding_midi(note.place, note.harmonic);
}

// What is struck at one count, dead notes left out.
struct Strike {
  std::vector<int> pitches;  // sorted
};

// What is struck in the example, in order; which notes come before and after a note.
class Line {
 public:
  Line(const lesson::Example& example, const fretboard::Neck& neck) {
    for (const lesson::Bar& bar : example.music.bars) {
      for (const lesson::Event& event : bar.events) add(event, neck);
    }
    for (std::size_t i = 0; i < strikes_.size(); ++i) {
      const bool same = i > 0 && strikes_[i].pitches == strikes_[i - 1].pitches;
      other_before_.push_back(i == 0 ? none : same ? other_before_[i - 1] : i - 1);
    }
    other_after_.assign(strikes_.size(), none);
    for (std::size_t i = strikes_.size(); i-- > 0;) {
      if (i + 1 == strikes_.size()) continue;
      const bool same = strikes_[i].pitches == strikes_[i + 1].pitches;
      other_after_[i] = same ? other_after_[i + 1] : i + 1;
    }
  }

  // The nearest other pitch in what is struck next (before): where the same note is struck again, after (before) that.
  std::optional<int> next(std::size_t strike, int midi) const {
    if (strike + 1 >= strikes_.size()) return std::nullopt;
    return other(strike + 1, other_after_, midi);
  }
  std::optional<int> previous(std::size_t strike, int midi) const {
    if (strike == 0 || strike > strikes_.size()) return std::nullopt;
    return other(strike - 1, other_before_, midi);
  }

 private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  void add(const lesson::Event& event, const fretboard::Neck& neck) {
    Strike strike;
    for (const lesson::Note& note : event.notes) {
      if (!note.held && !note.dead) strike.pitches.push_back(midi_of(note, neck));
    }
    std::sort(strike.pitches.begin(), strike.pitches.end());
    if (!strike.pitches.empty()) strikes_.push_back(std::move(strike));
  }

  std::optional<int> other(std::size_t strike, const std::vector<std::size_t>& beyond, int midi) const {
    if (const auto found = nearest_other(strike, midi)) return found;
    return beyond[strike] == none ? std::nullopt : nearest_other(beyond[strike], midi);
  }

  std::optional<int> nearest_other(std::size_t strike, int midi) const {
    std::optional<int> best;
    for (const int pitch : strikes_[strike].pitches) {
      const bool nearer = !best || std::abs(pitch - midi) < std::abs(*best - midi);
      if (pitch != midi && nearer) best = pitch;
    }
    return best;
  }

  std::vector<Strike> strikes_;
  std::vector<std::size_t> other_before_;
  std::vector<std::size_t> other_after_;
};

theory::Pitch spelled(int midi, const theory::SpellingContext& context) {
  return theory::pitch_of(theory::spell(midi, context), midi);
}

bool strikes(const lesson::Event& event) {
  return std::any_of(event.notes.begin(), event.notes.end(),
                     [](const lesson::Note& note) { return !note.held && !note.dead; });
}

// A list for a chord has a word for each string: it can be taken out only as a whole.
void take_in(std::optional<SpelledNotes::Forced>& all, const SpelledNotes::Forced& word) {
  all = all ? SpelledNotes::Forced{source::joined(all->range, word.range), all->idle && word.idle} : word;
}

bool names(theory::NoteName name, int midi) {
  return name.pitch_class() == theory::floor_mod(midi, 12);
}

}  // namespace

SpelledNotes::SpelledNotes(const lesson::Example& example, const fretboard::Neck& neck, const Harmony& harmony) {
  const Line line(example, neck);
  std::vector<std::optional<theory::Pitch>> sounding(static_cast<std::size_t>(neck.strings()) + 1);
  std::size_t strike = 0;
  for (std::size_t b = 0; b < example.music.bars.size(); ++b) {
    for (const lesson::Event& event : example.music.bars[b].events) {
      theory::SpellingContext context{example.key, harmony.in_force(b, event.at), {}, {}};
      std::optional<Forced> forced;
      for (const lesson::Note& note : event.notes) {
        const int midi = midi_of(note, neck);
        context.next_midi = line.next(strike, midi);
        context.previous_midi = line.previous(strike, midi);
        auto& on_string = sounding[static_cast<std::size_t>(note.place.string)];
        on_string = spell(note, midi, neck, context, on_string);
        notes_[&note] = *on_string;
        if (note.spell) take_in(forced, {note.spell->range, *on_string == spelled(midi, context)});
        spell_graces(note, midi, neck, context);
      }
      if (forced) forced_.push_back(*forced);
      if (strikes(event)) ++strike;
    }
  }
}

// `before`: what sounded last on its string.
theory::Pitch SpelledNotes::spell(const lesson::Note& note, int midi, const fretboard::Neck& neck,
                                  const theory::SpellingContext& context, std::optional<theory::Pitch> before) {
  if (note.spell && names(note.spell->value, midi)) return theory::pitch_of(note.spell->value, midi);
  if (note.dead && neck.capo == 0) return neck.open_pitch(note.place.string);
  if (note.held && before && before->midi() == midi) return *before;
  return spelled(midi, context);
}

void SpelledNotes::spell_graces(const lesson::Note& note, int midi, const fretboard::Neck& neck,
                                theory::SpellingContext context) {
  context.previous_midi.reset();
  context.next_midi = midi;
  for (std::size_t i = note.graces.size(); i-- > 0;) {
    const int grace = neck.midi(note.graces[i].place);
    graces_[&note.graces[i]] = spelled(grace, context);
    context.next_midi = grace;
  }
}

}  // namespace fretsheaf::score
