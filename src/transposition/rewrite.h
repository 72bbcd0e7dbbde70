#pragma once

#include <string>

#include "lesson/lesson.h"
#include "source/text.h"

namespace fretsheaf::transposition {

// The lesson's file after a move to another key: remarks, order and everything that the move leaves alone stay as they
// are written. Changed are the keys, the frets of the grids, chord symbols, forced spellings, fingers that no longer
// fit, chords in texts and forms, the frets of neck pictures and shapes. Where `also-in` names the new key, it names
// the old one now, so that a whole-sheaf run makes the same keys as before. What a sheaf.toml says stays there; a key
// that comes from one is written into the lesson. REQUIRES: `before` was read from `file` without errors, and `after`
// is it in another key.
std::string rewritten(const source::Text& file, const lesson::Lesson& before, const lesson::Lesson& after);

}  // namespace fretsheaf::transposition
