#include "score/build_up.h"

#include <algorithm>

namespace fretsheaf::score {

std::vector<Step> build_up_of(lesson::BuildUp way, int bars) {
  std::vector<Step> steps;
  if (way == lesson::BuildUp::none || bars < 1) return steps;
  const auto add = [&](int first, int last) {
    // The whole is said once, at the end.
    if (first > 1 || last < bars) steps.push_back({first, last, false});
  };
  for (int bar = 1; bar <= bars; ++bar) {
    add(way == lesson::BuildUp::add_one ? 1 : bar, bar);
    if (way == lesson::BuildUp::pairs && bar % 2 == 0) add(bar - 1, bar);
  }
  steps.push_back({1, bars, true});
  return steps;
}

}  // namespace fretsheaf::score
