#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "score/text.h"

namespace fretsheaf::score {

// What is done to every stretch of plain words after the CommonMark around them has been read: `{{…}}` filled in.
using Fill = std::function<std::string(std::string_view)>;

// CommonMark (version 0.30, by cmark) as blocks. An item that begins with anything but a paragraph has a block of its
// own for its mark, without runs. Of raw HTML its characters are left, of a picture its words: the reader of lessons
// refuses both. More than 32 containers about a block are not told apart.
Blocks read_blocks(std::string_view text, const Fill& fill);

// A title: one line, in which nothing at the line's start is a sign ("1. The pulse" is no list).
Runs read_title(std::string_view text, const Fill& fill);

}  // namespace fretsheaf::score
