#pragma once

#include <vector>

#include "lesson/lesson.h"
#include "spoken/heard.h"

namespace fretsheaf::spoken::test {

// What a lesson's own model says is to be heard, example by example: taken from its grid, not from a score.
std::vector<std::vector<Heard>> written(const lesson::Lesson& lesson);

}  // namespace fretsheaf::spoken::test
