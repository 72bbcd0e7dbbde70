#include "transposition/fingers.h"

#include <algorithm>
#include <optional>

namespace fretsheaf::transposition {

namespace {

// A bar written `%` has its words in the bar that it repeats.
bool has_fingers(const lesson::Bar& bar) {
  for (const lesson::Event& event : bar.events) {
    for (const lesson::Note& note : event.notes) {
      if (note.finger) return true;
    }
  }
  return false;
}

struct Way {
  int strings = 0;
  int frets = 0;

  bool operator==(const Way&) const = default;
};

// Whether the whole bar goes one way.
bool keeps_shape(const lesson::Bar& bar, const std::vector<std::vector<fretboard::PlacedNote>>& to) {
  std::optional<Way> way;
  const auto goes_along = [&](fretboard::Place from, fretboard::Place there) {
    const Way own{there.string - from.string, there.fret - from.fret};
    if (!way) way = own;
    const bool open = from.fret == 0 || there.fret == 0;
    return own == *way && !(open && own.frets != 0);
  };
  for (std::size_t e = 0; e < bar.events.size(); ++e) {
    for (std::size_t n = 0; n < bar.events[e].notes.size(); ++n) {
      const lesson::Note& note = bar.events[e].notes[n];
      if (note.dead) continue;
      if (!goes_along(note.place, to[e][n].place)) return false;
      for (std::size_t g = 0; g < note.graces.size(); ++g) {
        if (!goes_along(note.graces[g].place, to[e][n].graces[g])) return false;
      }
    }
  }
  return true;
}

void take_out(lesson::Bar& bar, DroppedFingers& dropped) {
  for (lesson::Event& event : bar.events) {
    for (lesson::Note& note : event.notes) {
      if (note.finger && dropped.bars.empty()) dropped.first = note.finger->range;
      if (note.finger && (dropped.bars.empty() || dropped.bars.back() != bar.number))
        dropped.bars.push_back(bar.number);
      note.finger.reset();
    }
  }
}

}  // namespace

DroppedFingers drop_fingers(lesson::Music& music, const Places& to) {
  DroppedFingers dropped;
  DroppedFingers in_repeats;
  bool repeated_is_dropped = false;
  bool any_left = false;
  for (std::size_t b = 0; b < music.bars.size(); ++b) {
    lesson::Bar& bar = music.bars[b];
    if (!has_fingers(bar)) continue;
    if (!bar.same_as_previous) repeated_is_dropped = !keeps_shape(bar, to[b]);
    if (repeated_is_dropped) take_out(bar, bar.same_as_previous ? in_repeats : dropped);
    any_left = any_left || has_fingers(bar);
  }
  music.has_finger_row = music.has_finger_row && any_left;
  return dropped;
}

}  // namespace fretsheaf::transposition
