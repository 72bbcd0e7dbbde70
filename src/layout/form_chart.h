#pragma once

#include <string>

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// A form as a grid of bars under its heading: a row a line of the form, its first bar's number before it, the bars
// where the example stands shaded and named. Lines that are too long for the width
// go on in further rows. To who does not see it the picture says `words`, or its heading where there are none.
// REQUIRES: the example has a form.
Blocks form_blocks(const score::Example& example, const score::Naming& naming, double width, Setter& setter,
                   const std::string& words = {});

// Whether no line has to go on in a row below.
bool form_fits(const score::Example& example, const score::Naming& naming, double width, Setter& setter);

}  // namespace fretsheaf::layout
