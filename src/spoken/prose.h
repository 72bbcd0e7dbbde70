#pragma once

#include "score/text.h"
#include "spoken/phrases.h"
#include "spoken/walk.h"

namespace fretsheaf::spoken {

// A teacher's text, told as it is written, signs as words. Its headings lie deeper than the `level` that it stands at.
void add_prose(const score::Blocks& blocks, int level, const Phrases& phrases, Walk& walk);

// A practice note: an item of a list, and what more it has.
void add_note(const score::Blocks& blocks, int level, const Phrases& phrases, Walk& walk);

}  // namespace fretsheaf::spoken
