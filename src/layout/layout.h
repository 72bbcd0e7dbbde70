#pragma once

#include <string_view>

#include "score/alternatives.h"
#include "score/score.h"
#include "sheet/sheet.h"
#include "source/diagnostic.h"
#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::layout {

// The finished pages of a score; none where they would be more than a handout may have (lesson/limits.h). `alternatives`
// are what its pictures say to readers that do not see them; a picture without any says what it is called. `fonts` are
// the ids for each role (template::Role order), opened by the caller.
// Reports characters that no font has (as errors) and what could not be laid out as asked (as warnings). `lesson_text`
// is the lesson file's text: it is only searched for the places of such characters.
sheet::Sheet lay_out(const score::Score& score, const score::Alternatives& alternatives,
                     const templates::Template& look, typeface::Shaper& shaper,
                     const std::vector<std::vector<typeface::FontId>>& fonts, source::Diagnostics& diagnostics,
                     std::string_view lesson_text = {});

}  // namespace fretsheaf::layout
