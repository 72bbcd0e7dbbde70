#pragma once

#include <vector>

#include "lesson/music.h"
#include "transposition/placing.h"

namespace fretsheaf::transposition {

struct DroppedFingers {
  std::vector<int> bars;  // as printed
  source::Range first;    // where the first of them was written
};

// Takes the written fingers out of the bars in which the hand will lie otherwise than it does: they stay where all
// notes of a bar go the same way over strings and frets, open ones nowhere else. The music still lies where it did.
DroppedFingers drop_fingers(lesson::Music& music, const Places& to);

}  // namespace fretsheaf::transposition
