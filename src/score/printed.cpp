#include "score/printed.h"

#include <cstdlib>
#include <variant>

#include "words/words.h"

namespace fretsheaf::score {
namespace {

constexpr std::string_view flat = "♭";
constexpr std::string_view sharp = "♯";

// The raised part of a chord symbol: 'b' and '#' are nothing but accidentals there.
std::string with_accidentals(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == 'b') {
      out += flat;
    } else if (c == '#') {
      out += sharp;
    } else {
      out += c;
    }
  }
  return out;
}

words::Word mode_word(theory::Mode mode) {
  switch (mode) {
    case theory::Mode::major:
      return words::Word::key_major;
    case theory::Mode::minor:
      return words::Word::key_minor;
    case theory::Mode::dorian:
      return words::Word::key_dorian;
    case theory::Mode::phrygian:
      return words::Word::key_phrygian;
    case theory::Mode::lydian:
      return words::Word::key_lydian;
    case theory::Mode::mixolydian:
      return words::Word::key_mixolydian;
    case theory::Mode::locrian:
      return words::Word::key_locrian;
  }
  return words::Word::key_major;
}

}  // namespace

std::string printed(theory::NoteName name) {
  std::string out(1, "CDEFGAB"[static_cast<std::size_t>(name.letter)]);
  for (int i = 0; i < std::abs(name.alteration); ++i) out += name.alteration < 0 ? flat : sharp;
  return out;
}

std::string printed(const theory::Chord& chord) {
  const theory::ChordSymbolParts parts = theory::symbol_parts(chord);
  std::string out = printed(parts.root) + parts.on_line + with_accidentals(parts.raised);
  if (parts.bass) out += "/" + printed(*parts.bass);
  return out;
}

std::string printed(const theory::ChordToken& token, const theory::Key& key) {
  if (const auto* chord = std::get_if<theory::Chord>(&token)) return printed(*chord);
  if (const auto* numeral = std::get_if<theory::RomanNumeral>(&token)) return printed(theory::resolve(*numeral, key));
  return "N.C.";
}

std::string printed(const theory::Key& key, words::Language language) {
  return words::key_name(language, printed(key.tonic), mode_word(key.mode));
}

}  // namespace fretsheaf::score
