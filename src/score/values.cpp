#include "score/values.h"

namespace fretsheaf::score {

Rational NoteValue::length() const {
  const Rational plain = log2 >= 0 ? Rational(1, std::int64_t{1} << log2) : Rational(std::int64_t{1} << -log2);
  // Each dot adds half of what the one before added.
  return plain * (Rational(2) - Rational(1, std::int64_t{1} << dots));
}

bool power_of_two(std::int64_t number) {
  return number > 0 && (number & (number - 1)) == 0;
}

std::optional<NoteValue> value_of(Rational length) {
  constexpr std::int64_t whole = 1;
  const bool plain = length.numerator() == 1;
  const bool dotted = length.numerator() == 3 && length.denominator() > whole;
  if (!power_of_two(length.denominator()) || !(plain || dotted)) return std::nullopt;
  NoteValue value{dotted ? -1 : 0, dotted ? 1 : 0};
  for (std::int64_t part = length.denominator(); part > 1; part /= 2) ++value.log2;
  if (value.log2 > shortest_log2) return std::nullopt;
  return value;
}

}  // namespace fretsheaf::score
