#pragma once

#include "lesson/lesson.h"
#include "score/score.h"
#include "source/diagnostic.h"

namespace fretsheaf::score {

// What a lesson notates. Warnings (a value that had to be cut in an unusual way …) go into `diagnostics`.
// REQUIRES: the lesson was read without errors.
Score build_score(const lesson::Lesson& lesson, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::score
