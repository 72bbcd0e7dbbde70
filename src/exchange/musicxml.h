#pragma once

#include <string>

#include "score/score.h"

namespace fretsheaf::exchange {

// The score as a MusicXML 4.0 document (UTF-8): one part for all examples, a TAB staff, and a notes staff above it
// where an example asks for one. Holds no date and nothing of the page's layout, so that equal scores give equal bytes.
std::string musicxml(const score::Score& score);

}  // namespace fretsheaf::exchange
