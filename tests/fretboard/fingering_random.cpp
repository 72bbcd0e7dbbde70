#include "fretboard/fingering_random.h"

#include <algorithm>

namespace fretsheaf::fretboard {

namespace {

// The latest note on each string, as a tab is read.
struct Latest {
  NoteIndex index;
  Place place;
  bool dead = false;
};

}  // namespace

Played RandomLines::instrument() {
  const auto all = instruments();
  const Instrument& chosen = all[static_cast<std::size_t>(number(static_cast<int>(all.size())))];
  Played on{{chosen.tuning, chosen.frets, number(3) == 0 ? number(4) : 0, chosen.short_fifth_string},
            chosen.scale_length};
  // A shorter neck has less to try, and more that is off it.
  on.neck.frets = std::min(on.neck.frets, 9 + number(8));
  return on;
}

EventToPlace RandomLines::event(const Neck& neck, const Kind& kind, int hand, int shift) {
  EventToPlace event;
  event.length = theory::Rational(1 + number(3), 4 << number(3));
  const int notes = number(8) == 0 && kind.techniques ? 0 : 1 + number(kind.most_notes);
  std::vector<int> strings(static_cast<std::size_t>(neck.strings()));
  for (std::size_t i = 0; i < strings.size(); ++i) strings[i] = static_cast<int>(i) + 1;
  for (std::size_t i = strings.size(); i > 1; --i)
    std::swap(strings[i - 1], strings[static_cast<std::size_t>(number(static_cast<int>(i)))]);
  strings.resize(std::min(strings.size(), static_cast<std::size_t>(notes)));
  std::sort(strings.begin(), strings.end());
  for (const int string : strings) {
    Place place{string, number(4) == 0 ? 0 : hand + number(4)};
    if (!neck.has(place)) place.fret = 0;
    NoteToPlace note;
    note.midi = neck.midi(place) + shift;
    const bool one_dead =
        std::any_of(event.notes.begin(), event.notes.end(), [](auto& n) { return n.sound == Sound::dead; });
    if (kind.techniques && number(8) == 0 && !one_dead) {
      note.sound = Sound::dead;
      place.fret = 0;
    } else if (kind.techniques && number(12) == 0) {
      const Place node{string, number(2) == 0 ? 7 : 12};
      if (neck.has(node) && neck.harmonic_midi(node)) {
        place = node;
        note.sound = Sound::harmonic;
        // A shift leaves few harmonics where there are any.
        note.midi = *neck.harmonic_midi(node) + (number(2) == 0 ? 0 : shift);
      }
    } else if (kind.techniques && number(10) == 0) {
      note.stopped = true;
    }
    if (kind.original || number(2) == 0) note.original = place;
    if (kind.techniques && number(12) == 0) note.not_on.push_back(1 + number(neck.strings()));
    event.notes.push_back(note);
  }
  return event;
}

// Joins notes to the latest on their string, as their frets allow.
void RandomLines::join(Line& line, const Neck& neck) {
  std::vector<std::optional<Latest>> latest(static_cast<std::size_t>(neck.strings()) + 1);
  for (std::size_t e = 0; e < line.events.size(); ++e) {
    for (std::size_t n = 0; n < line.events[e].notes.size(); ++n) {
      NoteToPlace& note = line.events[e].notes[n];
      if (!note.original) continue;
      auto& before = latest[static_cast<std::size_t>(note.original->string)];
      if (before && number(2) == 0) {
        const NoteToPlace& source = line.events[static_cast<std::size_t>(before->index.event)]
                                        .notes[static_cast<std::size_t>(before->index.note)];
        const int up = note.original->fret - before->place.fret;
        const bool pitched = note.sound == Sound::pitched && source.sound == Sound::pitched;
        const bool near = before->index.event + 1 == static_cast<int>(e);
        if (pitched && near && number(2) == 0) {
          note.midi = source.midi;
          note.original = source.original;
          note.joint = Joint::held;
        } else if (pitched && up != 0) {
          const bool slide = number(2) == 0;
          note.joint = up > 0  ? (slide ? Joint::slide_up : Joint::hammer_on)
                       : slide ? Joint::slide_down
                               : Joint::pull_off;
        }
        if (note.joint != Joint::none) note.from = before->index;
      }
      before = Latest{{static_cast<int>(e), static_cast<int>(n)}, *note.original, note.sound == Sound::dead};
    }
  }
}

void RandomLines::add_graces(Line& line, const Neck& neck, int shift) {
  for (EventToPlace& event : line.events) {
    for (NoteToPlace& note : event.notes) {
      if (note.sound != Sound::pitched || note.joint != Joint::none || !note.original || number(6) != 0) continue;
      const Place place{note.original->string, note.original->fret + (number(2) == 0 ? -2 : 3)};
      if (!neck.has(place)) continue;
      const bool up = place.fret < note.original->fret;
      const bool slide = number(2) == 0;
      note.graces.push_back({neck.midi(place) + shift, Joint::none, place});
      note.joint = up ? (slide ? Joint::slide_up : Joint::hammer_on) : slide ? Joint::slide_down : Joint::pull_off;
    }
  }
}

Line RandomLines::line(const Neck& neck, const Kind& kind) {
  Line line;
  line.quarters_per_minute = 60 + number(100);
  const int hand = 1 + number(std::max(1, neck.last_fret() - 5));
  const int shift = number(2 * kind.most_shift + 1) - kind.most_shift;
  for (int i = 0; i < kind.events; ++i) line.events.push_back(event(neck, kind, hand, shift));
  if (kind.techniques) join(line, neck);
  if (kind.techniques) add_graces(line, neck, shift);
  return line;
}

}  // namespace fretsheaf::fretboard
