#include "spoken/sounding.h"

#include <algorithm>
#include <utility>

namespace fretsheaf::spoken {
namespace {

using theory::Rational;

// A symbol of an example, and the way to the next.
struct Symbol {
  const score::Example* example;
  std::size_t bar;
  std::size_t event;

  const score::Event& get() const { return example->bars[bar].events[event]; }
  Rational beats() const { return get().length / example->bars[bar].meter.count(); }
  bool next() {
    ++event;
    while (bar < example->bars.size() && event >= example->bars[bar].events.size()) {
      ++bar;
      event = 0;
    }
    return bar < example->bars.size();
  }
};

const score::Note* tied_into(const score::Event& event, const fretboard::Place& place) {
  for (const score::Note& note : event.notes) {
    if (note.tie_from && note.place == place) return &note;
  }
  return nullptr;
}

Rational beats_of(Symbol at, const score::Note& first) {
  Rational beats = at.beats();
  const score::Note* note = &first;
  while (note->tie_to && at.next()) {
    note = tied_into(at.get(), first.place);
    if (note == nullptr) break;
    beats += at.beats();
  }
  return beats;
}

// Of what has no notes.
Rational beats_of(Symbol at) {
  Rational beats = at.beats();
  while (at.get().tie_to && at.next() && at.get().tie_from) beats += at.beats();
  return beats;
}

Rational beats_of_rest(Symbol at) {
  Rational beats = at.beats();
  const std::size_t bar = at.bar;
  while (at.next() && at.bar == bar && at.get().rest) beats += at.beats();
  return beats;
}

Onset of_notes(const Symbol& at) {
  Onset onset{&at.get(), SoundKind::notes, {}, {}, false};
  for (const score::Note& note : at.get().notes) {
    onset.sounds.push_back({&note, note.tie_from ? Rational(0) : beats_of(at, note), note.tie_from});
  }
  std::reverse(onset.sounds.begin(), onset.sounds.end());  // as chords are told: the bottom line first
  return onset;
}

bool starts(const score::Event& event) {
  return event.struck ||
         std::any_of(event.notes.begin(), event.notes.end(), [](const score::Note& note) { return !note.tie_from; });
}

}  // namespace

std::vector<Onset> onsets_of(const score::Example& example, std::size_t bar) {
  std::vector<Onset> onsets;
  const std::vector<score::Event>& events = example.bars[bar].events;
  for (std::size_t i = 0; i < events.size(); ++i) {
    const score::Event& event = events[i];
    const Symbol at{&example, bar, i};
    if (event.blank) continue;
    if (event.rest) {
      if (i == 0 || !events[i - 1].rest) onsets.push_back({&event, SoundKind::rest, {}, beats_of_rest(at), false});
    } else if (event.beat_slash) {
      if (i == 0 || !events[i - 1].beat_slash) onsets.push_back({&event, SoundKind::freely, {}, {}, false});
    } else if (!event.notes.empty()) {
      if (i == 0 || starts(event)) onsets.push_back(of_notes(at));
    } else if (event.struck) {
      onsets.push_back({&event, event.strum ? SoundKind::strum : SoundKind::to_find, {}, beats_of(at), false});
    } else if (i == 0) {
      onsets.push_back({&event, SoundKind::held, {}, {}, false});
    }
    if (event.fermata && !onsets.empty()) onsets.back().fermata = true;  // it stands on the last of several symbols
  }
  return onsets;
}

}  // namespace fretsheaf::spoken
