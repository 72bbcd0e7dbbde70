#pragma once

#include "lesson/lesson.h"
#include "source/diagnostic.h"

namespace fretsheaf::lesson {

// Warns of everything that the lesson holds and no handout shows so far, at its first place in each example: nothing
// that a teacher writes is passed over in silence. What gets drawn loses its row in not_drawn.cpp.
void warn_not_drawn(const Lesson& lesson, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::lesson
