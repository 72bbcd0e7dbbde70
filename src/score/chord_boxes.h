#pragma once

#include <vector>

#include "lesson/lesson.h"
#include "score/pictures.h"
#include "source/diagnostic.h"

namespace fretsheaf::score {

// The chord boxes that an example asks for: the frets as given, else the best shape that holds the chord. A chord that
// no hand can hold on this neck is an error; given frets that four fingers cannot stop are a warning, and their box has
// no fingers.
std::vector<ChordBox> chord_boxes(const lesson::Lesson& lesson, const lesson::Example& example,
                                  source::Diagnostics& diagnostics);

}  // namespace fretsheaf::score
