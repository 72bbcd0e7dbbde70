#pragma once

#include <string>
#include <string_view>

#include "theory/chord.h"
#include "theory/key.h"
#include "theory/pitch.h"
#include "words/language.h"

// Names as they are printed, with the characters ♭ and ♯ (a double one twice).
namespace fretsheaf::score {

std::string printed(theory::NoteName name);                                    // "B♭"
std::string printed(const theory::Chord& chord);                               // "B♭m7♭5/D♭"
std::string printed(const theory::ChordToken& token, const theory::Key& key);  // numerals read in the key; "N.C."
std::string printed(const theory::Key& key, words::Language language);         // "B♭ Dorian"

}  // namespace fretsheaf::score
