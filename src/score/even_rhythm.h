#pragma once

#include "score/score.h"

namespace fretsheaf::score {

// Takes the rhythm out of an example: see hide() in exercise.h.
void even_rhythm(Example& example);

}  // namespace fretsheaf::score
