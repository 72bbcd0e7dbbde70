#include "lesson/grid_jumps.h"

#include <algorithm>
#include <optional>
#include <string>

namespace fretsheaf::lesson {
namespace {

constexpr int far = 12;

// The frets that a hand holds at one event, and the note that comes first in it.
struct Hold {
  int lowest = 0;
  int highest = 0;
  Range range;
};

std::optional<Hold> hold_of(const Event& event) {
  std::optional<Hold> hold;
  for (const Note& note : event.notes) {
    if (note.held || note.dead || note.place.fret == 0) continue;
    if (!hold) hold = Hold{note.place.fret, note.place.fret, note.range};
    hold->lowest = std::min(hold->lowest, note.place.fret);
    hold->highest = std::max(hold->highest, note.place.fret);
  }
  return hold;
}

}  // namespace

void warn_of_jumps(const GridInput& input, const Music& music) {
  std::optional<Hold> before;
  bool quick = false;   // the event before was short
  bool warned = false;  // of it: the way back is no second slip
  for (const Bar& bar : music.bars) {
    for (const Event& event : bar.events) {
      const std::optional<Hold> hold = hold_of(event);
      bool jumped = false;
      if (hold && before && quick && event.written_out) {
        const int distance = std::max(hold->lowest - before->highest, before->lowest - hold->highest);
        jumped = distance > far;
        if (jumped && !warned) {
          const bool up = hold->lowest > before->highest;
          input.diagnostics.warning(source::Code::far_jump, hold->range,
                                    "this note lies " + std::to_string(distance) + " frets " +
                                        (up ? "above" : "below") + " the quick one before it",
                                    "check both frets; on another string the note may lie nearer");
        }
      }
      warned = jumped && !warned;
      before = hold;
      quick = event.length <= Rational(1, 8);
    }
  }
}

}  // namespace fretsheaf::lesson
