#include "theory/rational.h"

#include <catch2/catch.hpp>
#include <cstdint>
#include <limits>
#include <vector>

using fretsheaf::theory::Rational;

namespace {

std::vector<Rational> sample() {
  std::vector<Rational> values;
  for (int numerator = -7; numerator <= 7; ++numerator) {
    for (int denominator = 1; denominator <= 9; ++denominator) values.emplace_back(numerator, denominator);
  }
  return values;
}

}  // namespace

TEST_CASE("A fraction is in lowest terms with a positive denominator") {
  const Rational half(-6, -12);
  CHECK(half.numerator() == 1);
  CHECK(half.denominator() == 2);
  CHECK(Rational(3, -6).to_string() == "-1/2");
  CHECK(Rational(0, -5).to_string() == "0");
  CHECK(Rational(0, -5).denominator() == 1);
  CHECK(Rational(8, 4).to_string() == "2");
  CHECK(Rational(3).to_string() == "3");
}

TEST_CASE("Fractions are added, subtracted, multiplied and divided exactly") {
  CHECK(Rational(1, 3) + Rational(1, 6) == Rational(1, 2));
  CHECK(Rational(1, 4) - Rational(1, 3) == Rational(-1, 12));
  CHECK(Rational(2, 3) * Rational(9, 4) == Rational(3, 2));
  CHECK(Rational(1, 4) / Rational(-3, 8) == Rational(-2, 3));
  Rational sum;
  for (int third = 0; third < 3000; ++third) sum += Rational(1, 3);
  CHECK(sum == Rational(1000));
  sum -= Rational(1, 7);
  CHECK(sum == Rational(6999, 7));
}

TEST_CASE("The laws of fields hold for fractions") {
  const std::vector<Rational> values = sample();
  bool all_hold = true;
  for (const Rational a : values) {
    for (const Rational b : values) {
      all_hold = all_hold && a + b == b + a && a * b == b * a && (a + b) - b == a;
      if (b != Rational(0)) all_hold = all_hold && (a / b) * b == a;
      for (const Rational c : {Rational(1, 3), Rational(-5, 64)}) all_hold = all_hold && (a + b) * c == a * c + b * c;
    }
  }
  CHECK(all_hold);
}

TEST_CASE("Fractions compare as the products of their cross terms") {
  CHECK(Rational(1, 3) < Rational(3, 8));
  CHECK(Rational(-1, 3) > Rational(-3, 8));
  CHECK(Rational(2, 4) == Rational(1, 2));
  // As doubles these two are the same number.
  const std::int64_t big = std::int64_t{1} << 60;
  CHECK(Rational(big, big + 1) < Rational(big + 1, big + 2));
  CHECK(Rational(big + 1, big + 2) > Rational(big, big + 1));
}

TEST_CASE("Floor goes down, below zero too") {
  CHECK(Rational(7, 2).floor() == 3);
  CHECK(Rational(-7, 2).floor() == -4);
  CHECK(Rational(-4).floor() == -4);
  CHECK(Rational(0).floor() == 0);
}

TEST_CASE("Products past 64 bits are reduced before they are cut") {
  const std::int64_t big = 3'000'000'019;  // times itself: 9·10^18, near the end of 64 bits
  CHECK(Rational(big, 7) * Rational(7, big) == Rational(1));
  CHECK(Rational(1, big) + Rational(1, big) == Rational(2, big));
  CHECK(Rational(1, 2 * big) - Rational(1, 2 * big) == Rational(0));
  const std::int64_t most = std::numeric_limits<std::int64_t>::max();
  CHECK(Rational(most, 2) / Rational(most, 4) == Rational(2));
}

TEST_CASE("The finest positions of a bar stay exact") {
  // The meter's lower figure times a count's fraction, both to 64, and the difference of two such.
  const Rational a = Rational(1, 64) * Rational(63, 64);
  const Rational b = Rational(1, 64) * Rational(1, 61);
  CHECK((a - b).to_string() == "3779/249856");
  CHECK((a - b) + b == a);
}
