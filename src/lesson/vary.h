#pragma once

#include <cstddef>

#include "lesson/music.h"

namespace fretsheaf::lesson {

// How many notes and chords are struck: what a `vary` grid needs places for.
std::size_t count_struck(const Music& music);

// Puts the source's notes, in order, where `into` strikes something, and holds them where it holds; its chords, too,
// where `into.chords_borrowed` says so. What `into` had of both is replaced. REQUIRES: as many are struck in both.
void put_notes(const Music& source, Music& into);

}  // namespace fretsheaf::lesson
