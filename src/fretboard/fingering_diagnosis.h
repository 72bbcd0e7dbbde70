#pragma once

#include <vector>

#include "fretboard/fingering_search.h"

namespace fretsheaf::fretboard {

// Why a step has no shape at all: every note that has no place, else the first that has none beside those before it.
void diagnose_step(const Step& step, const Board& board, std::vector<UnplayableNote>& unplayable);

// Why nothing leads from one step to the next, though each has shapes.
void diagnose_passage(const Step& from, const Layer& from_layer, const Step& to, const Layer& to_layer,
                      const Board& board, std::vector<UnplayableNote>& unplayable);

}  // namespace fretsheaf::fretboard
