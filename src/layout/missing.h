#pragma once

#include <span>
#include <string_view>

#include "layout/type.h"
#include "source/diagnostic.h"

namespace fretsheaf::layout {

// An error for each character that no font has, at its first place in the lesson's text outside comments (at the text's
// start where it is written in some other way, such as an escape).
void report_missing(std::span<const MissingCharacter> missing, std::string_view lesson_text,
                    source::Diagnostics& diagnostics);

}  // namespace fretsheaf::layout
