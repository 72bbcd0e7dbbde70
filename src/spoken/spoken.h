#pragma once

#include <string>

#include "score/alternatives.h"
#include "score/score.h"
#include "spoken/walk.h"

namespace fretsheaf::spoken {

// What the figures of the score's pages say, figure by figure.
score::Alternatives alternatives(const score::Score& score);

// The whole lesson in words. What a student's copy of an exercise hides is not in its score, and so it is not told.
Walk walk_through(const score::Score& score);

// A walk as plain text: a heading begins with as many # as it is deep, a blank line stands before every piece that is
// not a further one of its list.
std::string as_text(const Walk& walk);

// The same as an HTML document: headings, paragraphs, lists and tables, the language named, every text escaped; no
// style, no script, nothing from elsewhere.
std::string as_html(const Walk& walk);

}  // namespace fretsheaf::spoken
