#pragma once

#include <string>
#include <string_view>

#include "fretboard/neck.h"
#include "score/naming.h"
#include "theory/chord.h"
#include "theory/key.h"

// Names as they are printed, with the characters ♭ and ♯ (a double one twice).
namespace fretsheaf::score {

std::string printed(const theory::Chord& chord, const Naming& naming);  // "B♭m7♭5/D♭"
// Numerals read in the key; "N.C."
std::string printed(const theory::ChordToken& token, const theory::Key& key, const Naming& naming);
std::string printed(const theory::Key& key, const Naming& naming);  // "B♭ Dorian", "si bemolle dorico"

// "A string": a string by its letter, or "1st string" where two of the neck share one.
std::string string_name(int string, const fretboard::Neck& neck, const Naming& naming);

}  // namespace fretsheaf::score
