#pragma once

#include "lesson/music.h"

namespace fretsheaf::lesson {

// The note as it goes on from the event before: where it lies and what its head is, nothing of how it began.
Note going_on(const Note& note);

}  // namespace fretsheaf::lesson
