#pragma once

#include <string>

#include "lesson/lesson.h"

namespace fretsheaf::exchange::test {

// All of a lesson that its MusicXML says, in lines: two lessons whose lines are equal have the same music. What may
// differ when a lesson goes out and comes in again, and why, is the table in same_music.cpp; it is all evened out here.
std::string music_lines(const lesson::Lesson& lesson);

}  // namespace fretsheaf::exchange::test
