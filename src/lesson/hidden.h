#pragma once

#include "lesson/lesson.h"

namespace fretsheaf::lesson {

// What a student's copy of an example leaves out: what its own `hide` says, and what the example that it varies hides
// of what it takes from there, its frets and, where it borrows them, its chords.
Hidden hidden_in(const Lesson& lesson, const Example& example);

// Whether a lesson is an exercise, and so has an answer key.
bool hides_anything(const Lesson& lesson);

inline bool any(const Hidden& hidden) {
  return hidden.frets || hidden.rhythm || hidden.labels || hidden.chords;
}

}  // namespace fretsheaf::lesson
