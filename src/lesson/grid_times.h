#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Gives every bar its meter, number, beginning and end and every count its moment, and says where a bar does not add
// up. Fills `music.bars`, one for each bar of the draft, but for what sounds in them.
void set_times(const GridInput& input, GridDraft& draft, Music& music);

// Warns of a bar's last note held over beats that are not written, in a strip whose other bars write every beat.
void warn_of_unwritten_beats(const GridInput& input, const GridDraft& draft, const Music& music);

}  // namespace fretsheaf::lesson
