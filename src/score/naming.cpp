#include "score/naming.h"

#include <array>
#include <cstdlib>
#include <string_view>

#include "words/words.h"

namespace fretsheaf::score {
namespace {

using lesson::NoteNames;
using theory::Letter;
using theory::NoteName;
using words::Language;
using words::Word;

constexpr std::string_view flat = "♭";
constexpr std::string_view sharp = "♯";

using Seven = std::array<std::string_view, 7>;  // in the order of Letter

std::string_view syllable(Letter letter, Language language) {
  static constexpr Seven plain = {"do", "re", "mi", "fa", "sol", "la", "si"};
  static constexpr Seven french = {"do", "ré", "mi", "fa", "sol", "la", "si"};
  static constexpr Seven portuguese = {"dó", "ré", "mi", "fá", "sol", "lá", "si"};
  const auto index = static_cast<std::size_t>(letter);
  if (language == Language::fr) return french[index];
  return language == Language::pt ? portuguese[index] : plain[index];
}

std::string with_signs(std::string stem, int alteration) {
  for (int i = 0; i < std::abs(alteration); ++i) stem += alteration < 0 ? flat : sharp;
  return stem;
}

std::string letter(Letter letter, NoteNames names) {
  const std::size_t index = static_cast<std::size_t>(letter);
  return std::string(1, (names == NoteNames::letters_h ? "CDEFGAH" : "CDEFGAB")[index]);
}

// Cis, Fisis; Des, Es, Asas never but Ases; B and Heses.
std::string with_endings(NoteName name) {
  if (name.letter == Letter::B && name.alteration == -1) return "B";
  std::string text = letter(name.letter, NoteNames::letters_h);
  for (int i = 0; i < name.alteration; ++i) text += "is";
  for (int i = 0; i > name.alteration; --i) {
    const bool vowel = i == 0 && (name.letter == Letter::E || name.letter == Letter::A);
    text += vowel ? "s" : "es";
  }
  return text;
}

Word sign_word(int alteration) {
  if (alteration < 0) return alteration == -1 ? Word::flat : Word::double_flat;
  return alteration == 1 ? Word::sharp : Word::double_sharp;
}

// All syllables begin with an ASCII letter.
std::string with_capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

}  // namespace

std::string printed(NoteName name, const Naming& naming) {
  switch (naming.names) {
    case NoteNames::letters:
      break;
    case NoteNames::letters_h:
      return with_endings(name);
    case NoteNames::syllables:
      return with_signs(std::string(syllable(name.letter, naming.language)), name.alteration);
  }
  return with_signs(letter(name.letter, NoteNames::letters), name.alteration);
}

std::string in_words(NoteName name, const Naming& naming) {
  const bool many = std::abs(name.alteration) > 2;
  if (naming.names != NoteNames::syllables || name.alteration == 0 || many) return printed(name, naming);
  return std::string(syllable(name.letter, naming.language)) + " " +
         std::string(words::word(naming.language, sign_word(name.alteration)));
}

std::string chord_root(NoteName name, const Naming& naming) {
  switch (naming.names) {
    case NoteNames::letters:
      break;
    case NoteNames::letters_h:
      if (name.letter == Letter::B && name.alteration == -1) return "B";
      return with_signs(letter(name.letter, NoteNames::letters_h), name.alteration);
    case NoteNames::syllables:
      return with_capital(printed(name, naming));
  }
  return printed(name, naming);
}

std::string string_letter(const std::string& label, const Naming& naming) {
  const std::optional<NoteName> name = theory::parse_note_name(label);
  if (!name) return label;  // a number
  const bool small = label[0] >= 'a' && label[0] <= 'z';
  std::string text = with_capital(printed(*name, naming));
  if (small) text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

}  // namespace fretsheaf::score
