#include "theory/degree.h"

#include <array>

#include "theory/arithmetic.h"

namespace fretsheaf::theory {

namespace {

// The major scale on the line of fifths from its tonic.
constexpr std::array<int, 7> major_fifths = {0, 2, 4, -1, 1, 3, 5};

int natural_fifths(int number) {
  return major_fifths[static_cast<std::size_t>(floor_mod(number - 1, 7))];
}

std::optional<int> parse_number(std::string_view text) {
  if (text == "9") return 2;
  if (text == "11") return 4;
  if (text == "13") return 6;
  if (text.size() == 1 && text.front() >= '1' && text.front() <= '7') return text.front() - '0';
  return std::nullopt;
}

}  // namespace

std::string Degree::to_string() const {
  std::string text(static_cast<std::size_t>(alteration < 0 ? -alteration : alteration), alteration < 0 ? 'b' : '#');
  return text + std::to_string(number);
}

int fifths_of(Degree degree) {
  return natural_fifths(degree.number) + 7 * degree.alteration;
}

Degree degree_above(NoteName root, NoteName note) {
  const int number = floor_mod(static_cast<int>(note.letter) - static_cast<int>(root.letter), 7) + 1;
  return {number, (note.fifths() - root.fifths() - natural_fifths(number)) / 7};
}

std::optional<Degree> parse_degree(std::string_view text) {
  const char accidental = text.starts_with('b') ? 'b' : '#';
  int signs = 0;
  while (text.starts_with(accidental)) {
    text.remove_prefix(1);
    ++signs;
  }
  const std::optional<int> number = parse_number(text);
  if (!number || signs > 2) return std::nullopt;
  return Degree{*number, accidental == 'b' ? -signs : signs};
}

}  // namespace fretsheaf::theory
