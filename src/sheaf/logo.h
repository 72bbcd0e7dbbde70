#pragma once

#include <optional>

#include "lesson/lesson.h"
#include "platform/system.h"
#include "score/score.h"
#include "source/diagnostic.h"

namespace fretsheaf::sheaf {

// A lesson's logo, read from its file. What cannot be read or drawn, and an SVG with text, scripts or outside parts, is
// an error at the lesson's `logo`. nullopt then, and where the lesson has none.
std::optional<score::Logo> read_logo(const lesson::Lesson& lesson, const platform::System& system,
                                     source::Diagnostics& diagnostics);

}  // namespace fretsheaf::sheaf
