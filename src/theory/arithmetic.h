#pragma once

namespace fretsheaf::theory {

// Division that rounds down and its remainder from 0 up, so that letters and fifths wrap the same way below zero.
// REQUIRES: divisor > 0.
constexpr int floor_mod(int value, int divisor) {
  const int rest = value % divisor;
  return rest < 0 ? rest + divisor : rest;
}

constexpr int floor_div(int value, int divisor) {
  return (value - floor_mod(value, divisor)) / divisor;
}

}  // namespace fretsheaf::theory
