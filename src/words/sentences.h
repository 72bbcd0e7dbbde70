#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "words/language.h"

namespace fretsheaf::words {

// The patterns of which a lesson is told aloud. sentences.def says what each is for, and which holes it has.
enum class Sentence : std::uint8_t {
#define FRETSHEAF_SENTENCE(name) name,
#include "words/sentences.def"
#undef FRETSHEAF_SENTENCE
};

// All of them, in their order.
inline constexpr std::array all_sentences = {
#define FRETSHEAF_SENTENCE(name) Sentence::name,
#include "words/sentences.def"
#undef FRETSHEAF_SENTENCE
};

inline constexpr std::size_t sentence_count = all_sentences.size();
static_assert(sentence_count <= 256);

// The pattern as it stands in the table; valid for ever.
std::string_view sentence(Language language, Sentence sentence);

// The forms of a noun that is counted stand one after the other in the table; `one` names the first, and the number
// decides by the plural rules of Unicode CLDR.
std::string_view form(Language language, Sentence one, int n);

// "5th fret", "5. Bund"; "open" of 0.
std::string fret_name(Language language, int fret);
// "A string"; and "1st string", counted from the tab's top line.
std::string string_by_letter(Language language, std::string_view letter);
std::string string_by_number(Language language, int string);
// "A string, 5th fret", of the two.
std::string place_name(Language language, std::string_view string, int fret);

// Makes the text's letter at `place` a capital where it is a small one of these seven languages.
void raise(std::string& text, std::size_t place);

}  // namespace fretsheaf::words
