#pragma once

#include <cstddef>
#include <string>

#include "score/score.h"

namespace fretsheaf::exchange {

// The score as a MusicXML 4.0 document (UTF-8): one part for all examples that have bars, a notes staff
// over a TAB staff; a lesson of rhythms alone has one staff of slashes. Holds no date and nothing of the page's layout,
// so that equal scores give equal bytes.
std::string musicxml(const score::Score& score);

// The same of one example alone (an index into the score's). REQUIRES: it has bars.
std::string musicxml(const score::Score& score, std::size_t example);

}  // namespace fretsheaf::exchange
