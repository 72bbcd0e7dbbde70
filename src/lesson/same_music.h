#pragma once

#include "lesson/music.h"

namespace fretsheaf::lesson {

// Whether two notes are the same but for where they are written.
bool same_note(const Note& a, const Note& b);

// Whether two grids say the same: all of their music but where it is written.
bool same_music(const Music& a, const Music& b);

}  // namespace fretsheaf::lesson
