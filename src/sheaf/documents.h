#pragma once

#include <string>

#include "score/score.h"
#include "sheaf/workshop.h"

namespace fretsheaf::sheaf {

// Whether a format carries the music and no page.
bool is_document(Format format);

// Adds a score's MusicXML, compressed or not: one file, or where it is `split` one for every example that has bars,
// with the example's number in its name (".d-dorian.2.musicxml"). None, and `made` says why, where no example can be
// written.
void add_documents(const score::Score& score, Format format, bool split, const std::string& name, Made& made);

}  // namespace fretsheaf::sheaf
