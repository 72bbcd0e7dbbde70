#pragma once

#include <string>

#include "spoken/phrases.h"

namespace fretsheaf::spoken {

// What holds for a whole example, in whole sentences: its key where that is not the lesson's, meter, feel and tempo,
// from where frets are counted, and what an exercise leaves to find. What was told of the example `before` and holds
// still, its meter and the capo, is not told again.
std::string opening_of(const score::Example& example, const Phrases& phrases, const score::Example* before = nullptr);

}  // namespace fretsheaf::spoken
