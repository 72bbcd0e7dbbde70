#include "score/printed.h"

#include <algorithm>
#include <optional>

#include "words/sentences.h"
#include "words/words.h"

namespace fretsheaf::score {
namespace {

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

std::string printed(const theory::Chord& chord, const Naming& naming) {
  const theory::ChordSymbolParts parts = theory::symbol_parts(chord);
  std::string out = chord_root(parts.root, naming) + parts.on_line + with_accidentals(parts.raised);
  if (parts.bass) out += "/" + chord_root(*parts.bass, naming);
  return out;
}

std::string printed(const theory::ChordToken& token, const theory::Key& key, const Naming& naming) {
  const std::optional<theory::Chord> chord = theory::resolve(token, key);
  return chord ? printed(*chord, naming) : "N.C.";
}

std::string printed(const theory::Key& key, const Naming& naming) {
  return words::key_name(naming.language, in_words(key.tonic, naming), mode_word(key.mode));
}

std::string with_accidentals(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == 'b') {
      out += "♭";
    } else if (c == '#') {
      out += "♯";
    } else {
      out += c;
    }
  }
  return out;
}

std::string string_name(int string, const fretboard::Neck& neck, const Naming& naming) {
  const theory::NoteName name = neck.open_pitch(string).name;
  const auto sharing = std::count_if(neck.tuning.begin(), neck.tuning.end(),
                                     [&](const theory::Pitch& open) { return open.name == name; });
  return sharing == 1 ? words::string_by_letter(naming.language, in_words(name, naming))
                      : words::string_by_number(naming.language, string);
}

}  // namespace fretsheaf::score
