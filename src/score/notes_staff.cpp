#include "score/notes_staff.h"

#include <algorithm>
#include <array>
#include <map>

#include "theory/arithmetic.h"
#include "theory/interval.h"

namespace fretsheaf::score {
namespace {

// What a harmonic's node lies above a note that sounds an octave or more over it: its letter, by semitones.
constexpr std::array<int, 12> steps_by_semitones = {0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6};

theory::Pitch touched(const Note& note, const fretboard::Neck& neck) {
  const int midi = neck.midi({note.place.string, 0}) + note.place.fret;
  const int above = theory::floor_mod(midi - note.sounding.midi(), 12);
  const theory::Interval interval{steps_by_semitones[static_cast<std::size_t>(above)], above};
  return theory::pitch_of(theory::practical(theory::transposed(note.sounding.name, interval)), midi);
}

// The accidentals of one example, taken through its notes in order.
class Accidentals {
 public:
  explicit Accidentals(const theory::Key& key) : key_(key) {}

  void begin_bar() {
    before_ = std::move(sounded_);
    sounded_.clear();
    in_force_.clear();
    tied_in_.clear();
    first_event_ = true;
  }

  void event(Event& event) {
    for (Note& note : event.notes) {
      for (GraceNote& grace : note.graces) grace.accidental = sign(grace.written, false);
    }
    for (std::size_t i = event.notes.size(); i-- > 0;) {
      Note& note = event.notes[i];
      if (note.head == HeadKind::dead) continue;
      if (note.tie_from) {
        tied(note.written);
      } else {
        note.accidental = sign(note.written, differs(event, note));
      }
    }
    first_event_ = false;
  }

 private:
  // Whether another note of the chord stands on the same line with another alteration.
  static bool differs(const Event& event, const Note& note) {
    return std::any_of(event.notes.begin(), event.notes.end(), [&](const Note& other) {
      return other.head != HeadKind::dead && other.written.diatonic() == note.written.diatonic() &&
             other.written.name.alteration != note.written.name.alteration;
    });
  }

  int in_key(const theory::Pitch& pitch) const { return key_.alteration_of(pitch.name.letter); }

  void tied(const theory::Pitch& pitch) {
    if (!first_event_) return;
    if (pitch.name.alteration != in_key(pitch)) tied_in_[pitch.diatonic()] = pitch.name.alteration;
    sound(pitch);
  }

  void sound(const theory::Pitch& pitch) { sounded_[pitch.diatonic()] = pitch.name.alteration; }

  std::optional<Accidental> sign(const theory::Pitch& pitch, bool forced) {
    const int line = pitch.diatonic();
    const int own = pitch.name.alteration;
    const auto held = in_force_.find(line);
    const bool marked = held != in_force_.end();
    const bool needed = own != (marked ? held->second : in_key(pitch));
    const bool reminded = !needed && !forced && !marked && in_doubt(pitch);
    sound(pitch);
    if (!needed && !forced && !reminded) return {};
    in_force_[line] = own;
    return Accidental{own, reminded};
  }

  // Whether a reader could still hear an alteration that no longer holds, or does not hold here.
  bool in_doubt(const theory::Pitch& pitch) const {
    const int own = pitch.name.alteration;
    const auto before = before_.find(pitch.diatonic());
    if (before != before_.end() && before->second != own) return true;
    const auto altered = [&](const std::map<int, int>& lines) {
      return std::any_of(lines.begin(), lines.end(), [&](const auto& line) {
        return theory::floor_mod(line.first - pitch.diatonic(), 7) == 0 && line.second != own;
      });
    };
    return altered(in_force_) || altered(tied_in_);
  }

  const theory::Key& key_;
  // By staff line or space, counted as Pitch::diatonic() does.
  std::map<int, int> in_force_;  // what accidentals of this bar say
  std::map<int, int> tied_in_;   // alterations that a tie brought over the bar line
  std::map<int, int> sounded_;   // what sounded last in this bar
  std::map<int, int> before_;    // and in the bar before
  bool first_event_ = true;
};

}  // namespace

void write_on_staff(Example& example, const fretboard::Neck& neck, bool sounds_octave_lower) {
  const int octaves = sounds_octave_lower ? 1 : 0;
  const auto raised = [&](theory::Pitch pitch) {
    pitch.octave += octaves;
    return pitch;
  };
  Accidentals accidentals(example.key);
  for (Bar& bar : example.bars) {
    accidentals.begin_bar();
    for (Event& event : bar.events) {
      for (Note& note : event.notes) {
        note.written = raised(note.head == HeadKind::harmonic ? touched(note, neck) : note.sounding);
        for (GraceNote& grace : note.graces) grace.written = raised(grace.sounding);
      }
      accidentals.event(event);
    }
  }
}

}  // namespace fretsheaf::score
