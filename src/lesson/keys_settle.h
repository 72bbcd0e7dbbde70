#pragma once

#include <string>

#include "lesson/keys_example.h"
#include "lesson/keys_lesson.h"
#include "lesson/reader.h"

// From what the files say to what is meant: defaults filled in, and the rules that tie one key to another.
namespace fretsheaf::lesson {

// A lesson without its examples, as far as its keys are sound.
Lesson settle_lesson(const LessonKeys& keys, const platform::System& system, ReadLesson& read);

// An example without its music.
Example settle_example(const ExampleKeys& keys, const LessonKeys& above, const Lesson& lesson,
                       source::Diagnostics& diagnostics);

// Whether the strings of the lesson's neck are known, so that a grid can be read against them.
bool knows_strings(const LessonKeys& keys);

}  // namespace fretsheaf::lesson
