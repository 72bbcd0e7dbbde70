#pragma once

#include "lesson/lesson.h"
#include "score/pictures.h"

namespace fretsheaf::score {

// The chart of a form, its chords read in the key.
FormChart form_chart(const lesson::Form& form, const theory::Key& key);

}  // namespace fretsheaf::score
