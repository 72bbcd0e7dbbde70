#include "transposition/intervals.h"

#include <algorithm>
#include <cstdlib>

#include "theory/arithmetic.h"

namespace fretsheaf::transposition {

std::vector<int> intervals_to(int semitones) {
  constexpr int octave = 12;
  constexpr int farthest = 4 * octave;
  std::vector<int> intervals;
  for (int by = theory::floor_mod(semitones, octave) - farthest; by <= farthest; by += octave) intervals.push_back(by);
  std::stable_sort(intervals.begin(), intervals.end(), [](int a, int b) { return std::abs(a) < std::abs(b); });
  return intervals;
}

}  // namespace fretsheaf::transposition
