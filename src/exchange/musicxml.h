#pragma once

#include <cstddef>
#include <string>

#include "score/score.h"

namespace fretsheaf::exchange {

// Whether an example is in the documents of a score: it has music, and nothing of it is hidden there.
bool has_document(const score::Score& score, const score::Example& example);

// The score as a MusicXML 4.0 document (UTF-8): one part for all examples that `has_document` names, a notes
// staff over a TAB staff; a lesson of rhythms alone has one staff of slashes. Holds no date and nothing of the page's
// layout, so that equal scores give equal bytes.
std::string musicxml(const score::Score& score);

// The same of one example alone (an index into the score's). REQUIRES: `has_document`.
std::string musicxml(const score::Score& score, std::size_t example);

}  // namespace fretsheaf::exchange
