#pragma once

#include <string>

#include "layout/block.h"
#include "layout/prose.h"
#include "score/score.h"

namespace fretsheaf::layout {

// A block's heading with a small hint beside it ("" for none), kept with what follows; its gap is that between blocks.
Block section_heading(const std::string& title, const std::string& hint, double width, Setter& setter);

// "EXAMPLE 1 The pulse", and flush right the tempo and the feel.
Block example_heading(const score::Example& example, double width, Setter& setter);

// The gap that stands before a heading or another large block.
void set_block_gap(Block& block, const templates::Measures& measures);

}  // namespace fretsheaf::layout
