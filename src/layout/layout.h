#pragma once

#include "score/score.h"
#include "sheet/sheet.h"
#include "source/diagnostic.h"
#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::layout {

// The finished pages of a score. `fonts` are the ids for each role (template::Role order), opened by the caller.
// Reports characters that no font has (as errors) and what could not be laid out as asked (as warnings).
sheet::Sheet lay_out(const score::Score& score, const templates::Template& look, typeface::Shaper& shaper,
                     const std::vector<std::vector<typeface::FontId>>& fonts, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::layout
