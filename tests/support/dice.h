#pragma once

#include <random>
#include <vector>

namespace fretsheaf::test {

// Random choices that a seed repeats on every machine (the standard's distributions would differ from one library to
// the next).
class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}

  // 0 … n − 1. REQUIRES: n > 0.
  int below(int n) { return static_cast<int>(engine_() % static_cast<unsigned>(n)); }
  int between(int least, int most) { return least + below(most - least + 1); }
  bool chance(int percent) { return below(100) < percent; }
  template <typename T>
  const T& pick(const std::vector<T>& choices) {
    return choices[static_cast<std::size_t>(below(static_cast<int>(choices.size())))];
  }

 private:
  std::mt19937 engine_;
};

}  // namespace fretsheaf::test
