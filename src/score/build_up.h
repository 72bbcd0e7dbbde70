#pragma once

#include <vector>

#include "lesson/lesson.h"
#include "score/score.h"

namespace fretsheaf::score {

// The bars to tick off before the whole, the whole last. A pickup is played with its first bar.
// - bars: 1, 2, 3, all
// - pairs: 1, 2, 1–2, 3, 4, 3–4, all; a last bar without a partner alone
// - add-one: 1, 1–2, 1–3, all
std::vector<Step> build_up_of(lesson::BuildUp way, int bars);

}  // namespace fretsheaf::score
