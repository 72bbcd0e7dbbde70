#include "theory/rational.h"

namespace fretsheaf::theory {

namespace {

// Products of two 64-bit numbers, before they are reduced.
__extension__ using Wide = __int128;

Wide greatest_common_divisor(Wide a, Wide b) {
  if (a < 0) a = -a;
  if (b < 0) b = -b;
  while (b != 0) {
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

struct Reduced {
  std::int64_t numerator;
  std::int64_t denominator;
};

Reduced reduced(Wide numerator, Wide denominator) {
  const Wide divisor = greatest_common_divisor(numerator, denominator);
  if (divisor != 0) {
    numerator /= divisor;
    denominator /= divisor;
  }
  if (denominator < 0) {
    numerator = -numerator;
    denominator = -denominator;
  }
  return {static_cast<std::int64_t>(numerator), static_cast<std::int64_t>(denominator)};
}

Rational rational(Wide numerator, Wide denominator) {
  const Reduced terms = reduced(numerator, denominator);
  return Rational(terms.numerator, terms.denominator);
}

}  // namespace

Rational::Rational(std::int64_t numerator, std::int64_t denominator) {
  const Reduced terms = reduced(numerator, denominator);
  numerator_ = terms.numerator;
  denominator_ = terms.denominator;
}

std::string Rational::to_string() const {
  std::string text = std::to_string(numerator_);
  if (denominator_ != 1) text += "/" + std::to_string(denominator_);
  return text;
}

std::int64_t Rational::floor() const {
  const std::int64_t quotient = numerator_ / denominator_;
  const bool rounded_up = numerator_ < 0 && numerator_ % denominator_ != 0;
  return rounded_up ? quotient - 1 : quotient;
}

Rational Rational::operator-() const {
  return rational(-Wide{numerator_}, denominator_);
}

Rational operator+(Rational a, Rational b) {
  return rational(Wide{a.numerator_} * b.denominator_ + Wide{b.numerator_} * a.denominator_,
                  Wide{a.denominator_} * b.denominator_);
}

Rational operator-(Rational a, Rational b) {
  return rational(Wide{a.numerator_} * b.denominator_ - Wide{b.numerator_} * a.denominator_,
                  Wide{a.denominator_} * b.denominator_);
}

Rational operator*(Rational a, Rational b) {
  return rational(Wide{a.numerator_} * b.numerator_, Wide{a.denominator_} * b.denominator_);
}

Rational operator/(Rational a, Rational b) {
  return rational(Wide{a.numerator_} * b.denominator_, Wide{a.denominator_} * b.numerator_);
}

std::strong_ordering operator<=>(Rational a, Rational b) {
  const Wide left = Wide{a.numerator_} * b.denominator_;
  const Wide right = Wide{b.numerator_} * a.denominator_;
  if (left < right) return std::strong_ordering::less;
  if (left > right) return std::strong_ordering::greater;
  return std::strong_ordering::equal;
}

}  // namespace fretsheaf::theory
