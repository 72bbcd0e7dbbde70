#include "transposition/placing.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

namespace fretsheaf::transposition {

namespace {

using fretboard::Place;
using fretboard::PlacedNote;
using lesson::Approach;

PlacedNote place_of(const lesson::Note& note) {
  PlacedNote placed{note.place, {}};
  for (const lesson::GraceNote& grace : note.graces) placed.graces.push_back(grace.place);
  return placed;
}

// The words of the plucking hand stay in the order of the strings.
void sort_by_string(lesson::Event& event) {
  std::vector<std::optional<source::Located<std::string>>> hand;
  for (const lesson::Note& note : event.notes) {
    if (note.hand) hand.push_back(note.hand);
  }
  std::stable_sort(event.notes.begin(), event.notes.end(),
                   [](const lesson::Note& a, const lesson::Note& b) { return a.place.string < b.place.string; });
  auto next = hand.begin();
  for (lesson::Note& note : event.notes) {
    if (note.hand) note.hand = *next++;
  }
}

// Reads joints as a reader of the grid does.
class JointCheck {
 public:
  bool holds(const lesson::Note& note) {
    if (note.held) return true;
    bool sound = !note.approach_from_nowhere || !fret_on(note.place.string);
    for (const lesson::GraceNote& grace : note.graces) sound = sound && leads(grace.approach, grace.place);
    sound = sound && (note.approach_from_nowhere || leads(note.approach, note.place));
    frets_[note.place.string] = note.dead ? dead : note.place.fret;
    return sound;
  }

 private:
  static constexpr int dead = -1;

  std::optional<int> fret_on(int string) const {
    const auto found = frets_.find(string);
    if (found == frets_.end()) return std::nullopt;
    return found->second;
  }

  bool leads(Approach approach, Place place) {
    const std::optional<int> from = fret_on(place.string);
    frets_[place.string] = place.fret;
    if (approach == Approach::none || (from && *from == dead)) return true;
    const bool slide = approach == Approach::slide_up || approach == Approach::slide_down;
    if (!from) return slide;
    const bool up = approach == Approach::hammer_on || approach == Approach::slide_up;
    return up ? place.fret > *from : place.fret < *from;
  }

  std::map<int, int> frets_;  // by string
};

}  // namespace

Places places_of(const lesson::Music& music) {
  Places places;
  for (const lesson::Bar& bar : music.bars) {
    auto& events = places.emplace_back();
    for (const lesson::Event& event : bar.events) {
      auto& notes = events.emplace_back();
      for (const lesson::Note& note : event.notes) notes.push_back(place_of(note));
    }
  }
  return places;
}

Places places_found(const lesson::Music& music, const PlayingLine& line, const fretboard::Fingering& found) {
  Places places = places_of(music);
  for (std::size_t i = 0; i < line.events.size(); ++i) {
    places[line.events[i].bar][line.events[i].event] = found.events[i];
  }
  std::map<int, Place> before;  // where the notes of the event before went, by the string that they came from
  std::size_t written = 0;      // the bar that a `%` repeats
  for (std::size_t b = 0; b < music.bars.size(); ++b) {
    const lesson::Bar& bar = music.bars[b];
    if (!bar.same_as_previous) written = b;
    for (std::size_t e = 0; e < bar.events.size(); ++e) {
      std::map<int, Place> here;
      for (std::size_t n = 0; n < bar.events[e].notes.size(); ++n) {
        const lesson::Note& note = bar.events[e].notes[n];
        PlacedNote& placed = places[b][e][n];
        const auto held_from = before.find(note.place.string);
        if (note.held && held_from != before.end()) {
          placed = {held_from->second, {}};
        } else if (bar.same_as_previous) {
          placed = places[written][e][n];
        }
        here[note.place.string] = placed.place;
      }
      before = std::move(here);
    }
  }
  return places;
}

std::optional<Places> places_along_strings(const lesson::Music& music, const fretboard::Neck& neck, int frets) {
  Places places = places_of(music);
  for (std::size_t b = 0; b < music.bars.size(); ++b) {
    for (std::size_t e = 0; e < music.bars[b].events.size(); ++e) {
      for (std::size_t n = 0; n < music.bars[b].events[e].notes.size(); ++n) {
        const lesson::Note& note = music.bars[b].events[e].notes[n];
        if (note.dead) continue;
        if (note.harmonic) return std::nullopt;
        PlacedNote& placed = places[b][e][n];
        const auto shift = [&](Place& place) {
          const bool stopped = place.fret > 0;
          place.fret += frets;
          return stopped && place.fret > 0 && neck.has(place);
        };
        if (!shift(placed.place)) return std::nullopt;
        for (Place& grace : placed.graces) {
          if (!shift(grace)) return std::nullopt;
        }
      }
    }
  }
  return places;
}

void place(lesson::Music& music, const Places& places) {
  for (std::size_t b = 0; b < music.bars.size(); ++b) {
    for (std::size_t e = 0; e < music.bars[b].events.size(); ++e) {
      lesson::Event& event = music.bars[b].events[e];
      for (std::size_t n = 0; n < event.notes.size(); ++n) {
        const PlacedNote& placed = places[b][e][n];
        event.notes[n].place = placed.place;
        for (std::size_t g = 0; g < placed.graces.size(); ++g) event.notes[n].graces[g].place = placed.graces[g];
      }
      sort_by_string(event);
    }
  }
}

std::optional<LyingNote> broken_joint(const lesson::Music& music) {
  JointCheck check;
  for (std::size_t b = 0; b < music.bars.size(); ++b) {
    for (std::size_t e = 0; e < music.bars[b].events.size(); ++e) {
      for (const lesson::Note& note : music.bars[b].events[e].notes) {
        if (!check.holds(note)) return LyingNote{{b, e}, note.place.string};
      }
    }
  }
  return std::nullopt;
}

}  // namespace fretsheaf::transposition
