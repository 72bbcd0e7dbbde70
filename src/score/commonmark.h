#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "score/text.h"

namespace fretsheaf::score {

// What is done to every stretch of plain words after the CommonMark around them has been read: `{{…}}` filled in.
using Fill = std::function<std::string(std::string_view)>;

// CommonMark (version 0.30, by cmark) as blocks. Code blocks and raw HTML are paragraphs of just these characters (the
// code in code runs); of a picture its words are left. A further paragraph of a list item is a paragraph whose `level`
// is the list's.
Blocks read_blocks(std::string_view text, const Fill& fill);

// The same for a text of one paragraph, a practice note: further blocks follow after a line break.
Runs read_note(std::string_view text, const Fill& fill);

// A title: one line, in which nothing at the line's start is a sign ("1. The pulse" is no list).
Runs read_title(std::string_view text, const Fill& fill);

}  // namespace fretsheaf::score
