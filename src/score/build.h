#pragma once

#include "lesson/lesson.h"
#include "score/score.h"
#include "source/diagnostic.h"

namespace fretsheaf::score {

// For whom: what `hide` names is not in a student's score at all, and an answer key's has it.
enum class Copy { student, answer_key };

// What a lesson notates. Warnings (a value that had to be cut in an unusual way …) go into `diagnostics`.
// REQUIRES: the lesson was read without errors.
Score build_score(const lesson::Lesson& lesson, source::Diagnostics& diagnostics, Copy copy = Copy::student);

}  // namespace fretsheaf::score
