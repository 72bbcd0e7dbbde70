#include "transposition/playing_line.h"

#include <optional>
#include <utility>

#include "theory/tempo.h"

namespace fretsheaf::transposition {

namespace {

using fretboard::Joint;
using lesson::Approach;

Joint joint_of(Approach approach) {
  switch (approach) {
    case Approach::none:
      return Joint::none;
    case Approach::hammer_on:
      return Joint::hammer_on;
    case Approach::pull_off:
      return Joint::pull_off;
    case Approach::slide_up:
      return Joint::slide_up;
    case Approach::slide_down:
      return Joint::slide_down;
  }
  return Joint::none;
}

// How fast the hand must be: the tempo that the example is to reach.
theory::Rational quarters_per_minute(const lesson::Example& example) {
  if (!example.tempo) return fretboard::Line{}.quarters_per_minute;
  const theory::Rational beat = example.tempo->beat.value_or(theory::beat_unit(example.meter));
  return theory::quarters_per_minute(example.tempo->to, beat);
}

class LineMaker {
 public:
  explicit LineMaker(const LineWish& wish) : wish_(wish), latest_(static_cast<std::size_t>(wish.neck.strings()) + 1) {}

  PlayingLine make(const lesson::Example& example) {
    result_.line.quarters_per_minute = quarters_per_minute(example);
    const std::vector<lesson::Bar>& bars = example.music.bars;
    for (std::size_t b = 0; b < bars.size(); ++b) {
      if (bars[b].same_as_previous) continue;
      for (std::size_t e = 0; e < bars[b].events.size(); ++e) add(bars[b].events[e], {b, e});
    }
    return std::move(result_);
  }

 private:
  // The note that sounded last on a string.
  struct Latest {
    fretboard::NoteIndex note;
    bool dead = false;
  };

  void add(const lesson::Event& event, EventIndex index) {
    fretboard::EventToPlace out;
    out.length = event.length;
    for (const lesson::Note& note : event.notes) out.notes.push_back(note_to_place(note));
    const auto line_event = static_cast<int>(result_.line.events.size());
    for (std::size_t n = 0; n < event.notes.size(); ++n) {
      const lesson::Note& note = event.notes[n];
      latest_on(note.place.string) = Latest{{line_event, static_cast<int>(n)}, note.dead};
    }
    result_.line.events.push_back(std::move(out));
    result_.events.push_back(index);
  }

  fretboard::NoteToPlace note_to_place(const lesson::Note& note) {
    fretboard::NoteToPlace out;
    out.sound = note.dead       ? fretboard::Sound::dead
                : note.harmonic ? fretboard::Sound::harmonic
                                : fretboard::Sound::pitched;
    out.midi = note.dead ? 0 : wish_.neck.sounding_midi(note.place, note.harmonic) + wish_.semitones;
    out.original = original(note.place);
    out.stopped = note.bend || note.vibrato || note.slide_off != lesson::SlideOff::none || note.approach_from_nowhere;
    if (note.dead) return out;
    out.joint = note.held ? Joint::held : joint_of(note.approach);
    for (const lesson::GraceNote& grace : note.graces) {
      out.graces.push_back(
          {wish_.neck.midi(grace.place) + wish_.semitones, joint_of(grace.approach), original(grace.place)});
    }
    join(out, note.place.string);
    return out;
  }

  // The first of its grace notes, or the note itself, comes from what sounded on its string; from a dead note, or from
  // nothing, it only has to come somehow.
  void join(fretboard::NoteToPlace& note, int string) {
    Joint& first = note.graces.empty() ? note.joint : note.graces.front().joint;
    if (first == Joint::none) return;
    const std::optional<Latest>& latest = latest_on(string);
    if (latest && !latest->dead) {
      note.from = latest->note;
    } else {
      first = Joint::none;
    }
  }

  std::optional<fretboard::Place> original(fretboard::Place place) const {
    const std::optional<int>& string = wish_.strings[static_cast<std::size_t>(place.string) - 1];
    if (!string) return std::nullopt;
    return fretboard::Place{*string, place.fret};
  }

  std::optional<Latest>& latest_on(int string) { return latest_[static_cast<std::size_t>(string)]; }

  const LineWish& wish_;
  PlayingLine result_;
  std::vector<std::optional<Latest>> latest_;  // by string
};

}  // namespace

PlayingLine playing_line(const lesson::Example& example, const LineWish& wish) {
  return LineMaker(wish).make(example);
}

}  // namespace fretsheaf::transposition
