#pragma once

#include "layout/block.h"
#include "layout/prose.h"
#include "score/alternatives.h"
#include "score/score.h"
#include "source/diagnostic.h"

namespace fretsheaf::layout {

// An example's heading, intro and lines of music. Each line is a figure that says the `words` of its bars, or the
// example's number where there are none.
Blocks example_blocks(const score::Example& example, const score::ExampleAlternatives& words, const score::Score& score,
                      double width, Setter& setter, source::Diagnostics& diagnostics);

// Whether no line of code in the notes is wider than that.
bool practice_fits(const std::vector<score::Blocks>& notes, double width, Setter& setter);
// Practice notes under their heading. `hint` says whose they are, where that is not plain.
Blocks practice_blocks(const std::vector<score::Blocks>& notes, const std::string& hint, double width, Setter& setter);

}  // namespace fretsheaf::layout
