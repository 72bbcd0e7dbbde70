#include "layout/spacing.h"

#include <algorithm>
#include <cmath>

namespace fretsheaf::layout {

double stretch_of(double quarters, double ratio) {
  return std::pow(ratio, std::log2(quarters / 0.25));
}

double width_at(std::span<const Spring> springs, double k) {
  double width = 0;
  for (const Spring& s : springs) width += s.length(k);
  return width;
}

double stretch_to_fill(std::span<const Spring> springs, double width) {
  struct Corner {
    double k;
    double stretch;
    double least;
  };
  std::vector<Corner> corners;
  corners.reserve(springs.size());
  double constant = 0;  // what does not stretch at the present k
  for (const Spring& s : springs) {
    constant += s.fixed + s.least;
    if (s.stretch > 0) corners.push_back({s.least / s.stretch, s.stretch, s.least});
  }
  if (constant >= width) return 0;
  std::sort(corners.begin(), corners.end(), [](const Corner& a, const Corner& b) { return a.k < b.k; });
  double slope = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    constant -= corners[i].least;
    slope += corners[i].stretch;
    const double k = (width - constant) / slope;
    if (i + 1 == corners.size() || k <= corners[i + 1].k) return k;
  }
  return 0;
}

void take_in(std::span<Spring> springs, std::span<const Rod> rods) {
  const auto first_then = [&](bool direct) {
    for (const Rod& rod : rods) {
      if ((rod.to == rod.from + 1) != direct) continue;
      const std::span<Spring> under =
          springs.subspan(static_cast<std::size_t>(rod.from), static_cast<std::size_t>(rod.to - rod.from));
      if (width_at(under, 0) >= rod.length) continue;
      const double k = stretch_to_fill(under, rod.length);
      if (k > 0) {
        for (Spring& s : under) s.least = std::max(s.least, k * s.stretch);
      }
      // Where nothing under it stretches, the last spring gives what is lacking.
      const double lacking = rod.length - width_at(under, 0);
      if (lacking > 0) under.back().least += lacking;
    }
  };
  // Neighbours first, so that a long rod only adds what they leave it lacking.
  first_then(true);
  first_then(false);
}

}  // namespace fretsheaf::layout
