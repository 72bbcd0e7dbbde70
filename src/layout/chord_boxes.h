#pragma once

#include <string>
#include <vector>

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// Chord boxes under their heading, beside each other in as many rows as are needed: the chord's name, above the strings
// what sounds open or not at all, the stopped places (roots squares, others discs), a barre as one thick stroke, below
// the strings the fingers; beside a box that starts up the neck its first fret. The tab's bottom line is at the left,
// in a left-handed box at the right. To who does not see it each says its own of `words`, or its chord and frets where
// there are none. REQUIRES: at least one box.
Blocks box_blocks(const std::vector<score::ChordBox>& boxes, const score::Score& score, double width, Setter& setter,
                  const std::vector<std::string>& words = {});

// Whether they stand in one row of this width.
bool boxes_fit(const std::vector<score::ChordBox>& boxes, const score::Score& score, double width, Setter& setter);

}  // namespace fretsheaf::layout
