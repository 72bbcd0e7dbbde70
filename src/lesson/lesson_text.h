#pragma once

#include <string>

#include "lesson/lesson.h"

namespace fretsheaf::lesson {

// A lesson's file, for music that comes from elsewhere: all that its model says of the music and of the heading. What a
// teacher adds to it (intros, practice notes, labels, looks, texts in CommonMark) is not written. Titles and words are
// taken for plain text: nothing in them is a sign of CommonMark or asks for a filling.
// REQUIRES: an instrument, a title, and examples whose music the grid can say (see grid_text).
std::string lesson_text(const Lesson& lesson);

// A TOML string that says the text on one line.
std::string toml_quoted(const std::string& text);

// A plain text as a title's CommonMark says it: signs of its grammar behind a backslash.
std::string title_markup(const std::string& text);

}  // namespace fretsheaf::lesson
