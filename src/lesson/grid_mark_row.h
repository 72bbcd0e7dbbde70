#pragma once

#include <string_view>
#include <vector>

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// What a mark row leaves open at a bar's end, so that dashes at the next bar's start can go on: an index into the
// draft's spans, -1 for none. One a mark row, by its ordinal.
using OpenSpans = std::vector<int>;

// `ppp` to `fff` and `sfz`.
bool is_dynamic(std::string_view word);

// `before` is what the bar before left open; what this bar leaves open is put into `open`.
void read_mark_cell(const GridInput& input, const Cell& cell, int bar_index, const OpenSpans& before, OpenSpans& open,
                    GridDraft& draft);

}  // namespace fretsheaf::lesson
