#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "words/language.h"

namespace fretsheaf::words {

// Everything that the tool itself may print. words.def says what each is for, and which holes its pattern has.
enum class Word : std::uint8_t {
#define FRETSHEAF_WORD(name) name,
#include "words/words.def"
#undef FRETSHEAF_WORD
};

// All of them, in their order.
inline constexpr std::array all_words = {
#define FRETSHEAF_WORD(name) Word::name,
#include "words/words.def"
#undef FRETSHEAF_WORD
};

inline constexpr std::size_t word_count = all_words.size();

// The word or pattern as it stands in the table; valid for ever.
std::string_view word(Language language, Word word);

// What goes into one hole: `{name}` becomes `value`.
struct Hole {
  std::string_view name;
  std::string_view value;
};

// The pattern with its holes filled. A hole that is not given stays as it is written, so that it is seen.
std::string fill(std::string_view pattern, std::initializer_list<Hole> holes);
std::string fill(Language language, Word pattern, std::initializer_list<Hole> holes);
// The same at the end of a text.
void append(std::string& text, std::string_view pattern, std::initializer_list<Hole> holes);

// The commonest case: a pattern with the one hole {n}.
std::string fill_number(Language language, Word pattern, int n);

// Whether a number takes the form of one, by the plural rules of Unicode CLDR.
bool is_one(Language language, int n);

// What is counted; the grammatical number follows those rules.
enum class Counted : std::uint8_t { once_through, write_bars, passes };
std::string counted(Language language, Counted what, int n);

// "D Dorian", "d-Moll", "re minore". `tonic` is the note's name as it is printed; `mode` is one of the Word::key_…
std::string key_name(Language language, std::string_view tonic, Word mode);

// "A string, 5th fret" and "A string, open": the string by its letter, or, where two strings share one, by its number
// from the tab's top line (1).
std::string place_by_letter(Language language, std::string_view letter, int fret);
std::string place_by_number(Language language, int string, int fret);

// "page 1 of 2"
std::string page_of(Language language, int n, int total);

}  // namespace fretsheaf::words
