#include "theory/pitch.h"

#include <array>
#include <cmath>

#include "theory/arithmetic.h"

namespace fretsheaf::theory {

namespace {

constexpr std::array<int, 7> semitones_above_c = {0, 2, 4, 5, 7, 9, 11};
constexpr std::array<int, 7> fifths_of_letter = {0, 2, 4, -1, 1, 3, 5};
constexpr std::array<Letter, 7> letters_by_fifths = {Letter::F, Letter::C, Letter::G, Letter::D,
                                                     Letter::A, Letter::E, Letter::B};
constexpr std::string_view letter_signs = "CDEFGAB";

int natural_semitones(Letter letter) {
  return semitones_above_c[static_cast<std::size_t>(letter)];
}

std::optional<Letter> parse_letter(char sign) {
  if (sign >= 'a' && sign <= 'g') sign = static_cast<char>(sign - 'a' + 'A');
  const std::size_t index = letter_signs.find(sign);
  if (index == std::string_view::npos) return std::nullopt;
  return static_cast<Letter>(index);
}

// "", "b", "bb", "#", "##".
std::optional<int> parse_accidentals(std::string_view text) {
  if (text.size() > 2) return std::nullopt;
  const int count = static_cast<int>(text.size());
  if (text.find_first_not_of('#') == std::string_view::npos) return count;
  if (text.find_first_not_of('b') == std::string_view::npos) return -count;
  return std::nullopt;
}

}  // namespace

int NoteName::pitch_class() const {
  return floor_mod(natural_semitones(letter) + alteration, 12);
}

int NoteName::fifths() const {
  return fifths_of_letter[static_cast<std::size_t>(letter)] + 7 * alteration;
}

std::string NoteName::to_string() const {
  std::string text(1, letter_signs[static_cast<std::size_t>(letter)]);
  text.append(static_cast<std::size_t>(alteration < 0 ? -alteration : alteration), alteration < 0 ? 'b' : '#');
  return text;
}

NoteName note_name_from_fifths(int fifths) {
  const int from_f = fifths + 1;
  return {letters_by_fifths[static_cast<std::size_t>(floor_mod(from_f, 7))], floor_div(from_f, 7)};
}

std::optional<NoteName> parse_note_name(std::string_view text) {
  if (text.empty()) return std::nullopt;
  const std::optional<Letter> letter = parse_letter(text.front());
  const std::optional<int> alteration = parse_accidentals(text.substr(1));
  if (!letter || !alteration) return std::nullopt;
  return NoteName{*letter, *alteration};
}

NoteName practical(NoteName name) {
  while (name.alteration > 2) name = note_name_from_fifths(name.fifths() - 12);
  while (name.alteration < -2) name = note_name_from_fifths(name.fifths() + 12);
  return name;
}

int Pitch::midi() const {
  return 12 * (octave + 1) + natural_semitones(name.letter) + name.alteration;
}

std::string Pitch::to_string() const {
  return name.to_string() + std::to_string(octave);
}

std::optional<Pitch> parse_pitch(std::string_view text) {
  if (text.empty() || text.back() < '0' || text.back() > '9') return std::nullopt;
  const std::optional<NoteName> name = parse_note_name(text.substr(0, text.size() - 1));
  if (!name) return std::nullopt;
  return Pitch{*name, text.back() - '0'};
}

Pitch pitch_of(NoteName name, int midi) {
  // Without its accidental the note may lie in the octave next to the sound's: Cb4 sounds as B3 does.
  const int without_accidental = midi - name.alteration;
  return {name, floor_div(without_accidental, 12) - 1};
}

double frequency(int midi) {
  return 440.0 * std::exp2((midi - 69) / 12.0);
}

}  // namespace fretsheaf::theory
