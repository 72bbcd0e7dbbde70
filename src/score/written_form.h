#pragma once

#include "lesson/lesson.h"
#include "score/score.h"

namespace fretsheaf::score {

// Makes of an example the whole form with the example's music in its place: every other bar has slashes without stems,
// one a beat, under the form's chords. Bars are numbered through; what counts bars (endings, spans, dynamics, a
// build-up) follows. Where the music has no chords of its own it gets the form's; double bar lines stand where it
// begins and ends. The slashes need a slash staff, which is added where the example has none. REQUIRES: as many bars
// are marked as the example has, and no pickup follows a bar of the form.
void write_out(Example& example, const lesson::Form& form, int capo);

}  // namespace fretsheaf::score
