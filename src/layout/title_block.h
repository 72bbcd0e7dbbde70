#pragma once

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// The head of the first page: what the template puts there of the top line, title, subtitle and facts, lines for the
// student's name and the date, and the rule under it all. What a lesson does not give takes no room. Its origin is the
// text's top.
Block title_block(const score::Heading& heading, double width, Setter& setter);

}  // namespace fretsheaf::layout
