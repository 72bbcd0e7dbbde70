#include "lesson/held.h"

namespace fretsheaf::lesson {

Note going_on(const Note& note) {
  Note held;
  held.place = note.place;
  held.dead = note.dead;
  held.ghost = note.ghost;
  held.harmonic = note.harmonic;
  held.held = true;
  held.range = note.range;
  return held;
}

}  // namespace fretsheaf::lesson
