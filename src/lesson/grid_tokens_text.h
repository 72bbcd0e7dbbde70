#pragma once

#include <string>

#include "lesson/grid_rows_text.h"

namespace fretsheaf::lesson {

// The tokens of a grid as they are written.

GridToken note_token(const Note& note);
std::string strum_token(Strum strum);
std::string span_name(SpanKind kind);
// In quotes where it needs them. REQUIRES: words that a grid can hold (grid_words).
std::string word_token(const std::string& words);

}  // namespace fretsheaf::lesson
