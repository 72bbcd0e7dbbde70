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

// Text in which 'b' and '#' are nothing but accidentals ("b3", "7b9"), as it is printed ("♭3", "7♭9").
std::string with_accidentals(std::string_view text);

// "A string": a string by its letter, or "1st string" where two of the neck share one.
std::string string_name(int string, const fretboard::Neck& neck, const Naming& naming);

}  // namespace fretsheaf::score
