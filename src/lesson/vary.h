#pragma once

#include <cstddef>
#include <vector>

#include "lesson/music.h"

namespace fretsheaf::lesson {

// How many notes and chords are struck: what a `vary` grid needs places for.
std::size_t count_struck(const Music& music);

// Puts the source's notes, in order, where `into` strikes something, and holds them where it holds; its chords, too,
// where `into.chords_borrowed` says so. What `into` had of both is replaced. Where `into` has words of the plucking
// hand, they take the place of the source's. REQUIRES: as many are struck in both.
void put_notes(const Music& source, Music& into);

// The notes that the words of the plucking hand at an event belong to, top line first: those that are struck, or else
// all; none where the words are neither as many.
std::vector<Note*> notes_for_hand(Event& event);

}  // namespace fretsheaf::lesson
