#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

struct HandWordsInput {
  const GridInput& grid;
  const Count& count;
  Event* event = nullptr;  // what the count starts; nullptr where it starts nothing
  bool vary = false;
  bool report = true;  // false where a mistake is known already
};

// Ties the words of finger, hand, spell and stroke rows at a count to the notes that are struck there.
void attach_hand_words(const HandWordsInput& input);

}  // namespace fretsheaf::lesson
