#include "layout/outline.h"

#include <algorithm>

namespace fretsheaf::layout {

double descent(std::span<const sheet::Box> upper, std::span<const sheet::Box> lower, double gap, double beside) {
  double needed = std::numeric_limits<double>::lowest();
  for (const sheet::Box& u : upper) {
    for (const sheet::Box& l : lower) {
      if (u.left >= l.right + beside || l.left >= u.right + beside) continue;
      needed = std::max(needed, u.bottom + gap - l.top);
    }
  }
  return needed;
}

}  // namespace fretsheaf::layout
