#pragma once

#include <cstddef>
#include <vector>

#include "layout/music_context.h"
#include "layout/music_plan.h"

// Which events of a line of music belong together, for whatever staff draws it.
namespace fretsheaf::layout {

// A tuplet, and the stops of its events that stand in the line (all of them, but where a bar is cut).
struct TupletHere {
  const score::Tuplet* tuplet = nullptr;
  std::vector<std::size_t> stops;
};
std::vector<TupletHere> tuplets_here(const Context& context, const LinePlan& line);

// Calls `joined(first, last)` for each run of a group's notes that a beam of this level (from 1) joins, and
// `partial(note, leftward)` for each note that has one by itself. `notes` have an `event`.
template <typename Notes, typename Joined, typename Partial>
void each_beam(const Notes& notes, int level, Joined joined, Partial partial) {
  for (std::size_t i = 0; i < notes.size(); ++i) {
    const bool from_left = i > 0 && notes[i].event->beams_left >= level;
    if (from_left || notes[i].event->value.beams() < level) continue;
    std::size_t end = i;
    while (end + 1 < notes.size() && notes[end].event->beams_right >= level) ++end;
    if (end > i) {
      joined(notes[i], notes[end]);
    } else {
      // Where a line of music begins within a group, its first note has nothing on the left.
      partial(notes[i], i > 0 && notes[i].event->partial_left);
    }
  }
}

}  // namespace fretsheaf::layout
