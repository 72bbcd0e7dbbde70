#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// A bar of a form's chart on its way: its chords as they are written, and the form's repeat signs beside it.
struct FormCell {
  std::string chords;
  bool opens = false;
  bool closes = false;
};

// The bars of slashes before and after a section's notes.
struct TakenForm {
  std::vector<FormCell> before;
  std::vector<FormCell> after;
};

// A form that is written out: bars with a slash on every beat, which a section has before and after its notes. The
// section is then its bars of notes alone, and its name is moved to them; `part` is the context's. nullopt where the
// section has no such bars, or something else beside its notes.
std::optional<TakenForm> take_form(const AdoptContext& context, TakenPart& part, Section& section);

// The form around the section's music, whose chords are there.
lesson::Form form_around(const TakenForm& taken, const lesson::Music& music);

}  // namespace fretsheaf::exchange
