#pragma once

#include <string>
#include <vector>

#include "lesson/lesson.h"
#include "transposition/move.h"

// Lessons to move, and what came of it in short words.
namespace fretsheaf::transposition::test {

// A lesson file read; fails the test where it has errors.
lesson::Lesson read(const std::string& text);

// A lesson of one example: a key, an instrument, further lines of the lesson, and the grid's rows.
std::string lesson_text(const std::string& key, const std::string& instrument, const std::string& rows,
                        const std::string& lesson_keys = "", const std::string& example_keys = "");

// Moved without an error; fails the test otherwise.
Moved moved(const lesson::Lesson& lesson, const Destination& to);
Moved moved(const lesson::Lesson& lesson, const std::string& key);

// What is said of a move that fails or warns: "7:17: error: …", a line each, helps left out.
std::string said(const std::string& text, const Destination& to);
Destination to_key(const std::string& key);

// The places of an example: "A3 A5 D2 | x", chords with +, held notes in [], grace notes before a ^, rests left out.
std::string places(const lesson::Lesson& lesson, std::size_t example = 0);

// What each note of an example sounds, in order, held and dead ones left out, a chord from its lowest note up; grace
// notes before their note.
std::vector<int> pitches(const lesson::Lesson& lesson, std::size_t example);

}  // namespace fretsheaf::transposition::test
