#pragma once

#include "lesson/grid_draft.h"

namespace fretsheaf::lesson {

// Chords, texts, lyrics and sections, each at its moment; endings and the ways of the road row, and whether they lead
// somewhere; marks. REQUIRES: make_events has run.
void set_words(const GridInput& input, const GridDraft& draft, Music& music);
void set_form(const GridInput& input, const GridDraft& draft, Music& music);
void set_marks(const GridInput& input, const GridDraft& draft, Music& music);

// The moment of a count; nullopt where it was reported.
std::optional<Rational> moment_of(const BarDraft& draft, const Bar& bar, int count);

}  // namespace fretsheaf::lesson
