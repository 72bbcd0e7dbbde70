#include "layout/line_breaking.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fretsheaf::layout {
namespace {

// The cheapest way to begin with a line and go on to the end.
struct Way {
  double cost = std::numeric_limits<double>::max();
  int next = -1;  // index among the choices that begin after this line
};

double between(const LineChoice& a, const LineChoice& b, const Unevenness& unevenness) {
  const double difference = b.follows ? std::log2(static_cast<double>(a.bars) / b.bars) : a.tightness - b.tightness;
  return (b.follows ? unevenness.of_bars : unevenness.of_stretch) * difference * difference;
}

}  // namespace

std::vector<LineChoice> cheapest(const Choices& choices, const Unevenness& unevenness) {
  const std::size_t n = choices.size();
  std::vector<std::vector<Way>> ways(n);
  for (std::size_t first = n; first-- > 0;) {
    ways[first].resize(choices[first].size());
    for (std::size_t c = 0; c < choices[first].size(); ++c) {
      const LineChoice& line = choices[first][c];
      Way& way = ways[first][c];
      const auto after = static_cast<std::size_t>(line.last) + 1;
      if (after == n) {
        way.cost = line.cost;
        continue;
      }
      for (std::size_t i = 0; i < choices[after].size(); ++i) {
        const double rest = ways[after][i].cost;
        if (rest == std::numeric_limits<double>::max()) continue;
        const double cost = line.cost + between(line, choices[after][i], unevenness) + rest;
        if (cost < way.cost) way = {cost, static_cast<int>(i)};
      }
    }
  }
  std::vector<LineChoice> lines;
  if (n == 0) return lines;
  const auto cheaper = [](const Way& a, const Way& b) { return a.cost < b.cost; };
  auto best = std::min_element(ways[0].begin(), ways[0].end(), cheaper);
  if (best == ways[0].end() || best->cost == std::numeric_limits<double>::max()) return lines;
  auto choice = static_cast<std::size_t>(best - ways[0].begin());
  for (std::size_t first = 0; first < n;) {
    const LineChoice& line = choices[first][choice];
    lines.push_back(line);
    const Way& way = ways[first][choice];
    first = static_cast<std::size_t>(line.last) + 1;
    choice = static_cast<std::size_t>(std::max(way.next, 0));
  }
  return lines;
}

}  // namespace fretsheaf::layout
