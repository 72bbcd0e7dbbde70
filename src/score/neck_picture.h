#pragma once

#include "lesson/lesson.h"
#include "score/naming.h"
#include "score/pictures.h"
#include "score/spelled_notes.h"

namespace fretsheaf::score {

// The picture that an example asks for. Degrees are those of the key, and of a chord's picture those in the chord.
// Fingers are those written in the example; where it writes none, or the picture is not of its notes, one finger stands
// at each of four frets from the lowest stopped place on, and the fourth reaches one more (common practice).
// REQUIRES: `example.neck`; the notes are the example's.
NeckPicture neck_picture(const lesson::Lesson& lesson, const lesson::Example& example, const SpelledNotes& notes,
                         const Naming& naming);

}  // namespace fretsheaf::score
