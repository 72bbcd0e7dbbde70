#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace fretsheaf::theory {

// An exact fraction, always in lowest terms with a positive denominator. Musical time is counted in whole notes: a
// quarter note is 1/4. Positions in a bar have denominators up to 64·64 (the meter's lower figure times a `+p/q`),
// differences of two up to their product, so that 64 bits suffice; intermediate products are taken in 128.
class Rational {
 public:
  constexpr Rational() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): a whole number is a fraction
  constexpr Rational(std::int64_t whole) : numerator_(whole) {}
  // REQUIRES: denominator != 0.
  Rational(std::int64_t numerator, std::int64_t denominator);

  std::int64_t numerator() const { return numerator_; }
  std::int64_t denominator() const { return denominator_; }
  double to_double() const { return static_cast<double>(numerator_) / static_cast<double>(denominator_); }
  // "1/4", and "3" for a whole number.
  std::string to_string() const;
  // The greatest whole number that is not greater.
  std::int64_t floor() const;

  Rational operator-() const;
  friend Rational operator+(Rational a, Rational b);
  friend Rational operator-(Rational a, Rational b);
  friend Rational operator*(Rational a, Rational b);
  // REQUIRES: b != 0.
  friend Rational operator/(Rational a, Rational b);
  Rational& operator+=(Rational other) { return *this = *this + other; }
  Rational& operator-=(Rational other) { return *this = *this - other; }

  friend bool operator==(Rational, Rational) = default;
  friend std::strong_ordering operator<=>(Rational a, Rational b);

 private:
  std::int64_t numerator_ = 0;
  std::int64_t denominator_ = 1;
};

}  // namespace fretsheaf::theory
