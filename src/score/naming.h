#pragma once

#include <string>

#include "lesson/lesson.h"
#include "theory/pitch.h"
#include "words/language.h"

namespace fretsheaf::score {

// How a handout names notes: as its lesson asks, in its language. What the lesson's file says is always in letters.
//
// - letters: C D E F G A B with signs, B♭.
// - letters_h: B natural is H and B flat is B; sharps end in -is and flats in -es (Cis, Fisis, Des, but Es, As, and
//   Heses), as they are named where H is used. Chord symbols keep the signs: F♯m7, E♭, but B for B flat and H7.
// - syllables: do re mi fa sol la si, with the accents of French (ré) and Portuguese (dó, fá, lá); a capital in chord
//   symbols (Si♭, Lam7), the sign's name in running words (si bemolle, fa dièse) where the language has one.
//
// All common practice; the German names are also those of the handbooks (Duden; from memory).
struct Naming {
  lesson::NoteNames names = lesson::NoteNames::letters;
  words::Language language = words::Language::en;
};

// Under the music, where room is small: "B♭", "Es", "si♭".
std::string printed(theory::NoteName name, const Naming& naming);
// In running words and in the names of keys: "B♭", "Es", "si bemolle".
std::string in_words(theory::NoteName name, const Naming& naming);
// As the root or bass of a chord symbol: "B♭", "E♭", "Si♭".
std::string chord_root(theory::NoteName name, const Naming& naming);

// The letter that stands beside a string, as a lesson file writes it ("e", "Bb", or a number), in the handout's names:
// "h", "B♭", "Mi". A small letter stays small.
std::string string_letter(const std::string& label, const Naming& naming);

}  // namespace fretsheaf::score
