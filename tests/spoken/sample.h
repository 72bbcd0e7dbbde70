#pragma once

#include <string>

#include "score/build.h"

namespace fretsheaf::spoken::test {

// The score of a lesson's text; fails the test where it has errors.
score::Score score_of(const std::string& text, score::Copy copy = score::Copy::student);

// Rows of a grid with their cells made as wide as the widest of each column.
std::string aligned(const std::string& rows);

// One example on a bass, in D minor unless `keys` (of the lesson) say else; `own` are the example's, `rows` its grid,
// aligned.
score::Score example(const std::string& rows, const std::string& keys = "", const std::string& own = "");

}  // namespace fretsheaf::spoken::test
