#pragma once

#include "lesson/lesson.h"
#include "score/naming.h"
#include "score/pictures.h"
#include "score/spelled_notes.h"

namespace fretsheaf::score {

// The picture that an example asks for. Degrees are those of the key, and of a chord's picture those in the chord.
// Fingers are those written in the example; where it writes none, or the picture is not of its notes, one finger stands
// at each of four frets from the lowest stopped place on, and the fourth reaches one more (common practice).
// Of what is left out nothing is seen: without its frets a picture of the notes is an empty neck, and none is cut to
// fit them; without labels the marks of the notes have none, and no root among them is set apart.
// REQUIRES: `example.neck`; the notes are the example's.
NeckPicture neck_picture(const lesson::Lesson& lesson, const lesson::Example& example, const SpelledNotes& notes,
                         const Naming& naming, const lesson::Hidden& left_out);

}  // namespace fretsheaf::score
