#pragma once

#include "lesson/lesson.h"
#include "score/filler.h"
#include "score/score.h"

namespace fretsheaf::score {

// The title block: titles filled in, and the facts of key, meter, tuning and, where there is one, capo.
Heading heading_of(const lesson::Lesson& lesson, const Naming& naming, const Filler& filler);

// What an example's heading says of its tempo; nullopt where it has none.
std::optional<TempoMark> tempo_mark(const lesson::Example& example);
std::optional<Ladder> ladder_of(const lesson::Example& example);

}  // namespace fretsheaf::score
