#include "layout/line_break.h"

#include <algorithm>
#include <limits>

namespace fretsheaf::layout {
namespace {

// A paragraph's last line shorter than this share of the measure looks like a scrap.
constexpr double scrap = 0.12;
constexpr double scrap_cost = 0.15;
constexpr double line_cost = 0.05;  // of equals, fewer lines
constexpr double overfull = 1e4;
constexpr double rounding = 1e-6;

double cost(double natural, double width, bool last, bool only) {
  if (natural > width + rounding) return overfull + natural - width;
  const double free = width > 0 ? (width - natural) / width : 0;
  if (!last) return line_cost + free * free;
  return line_cost + (!only && 1 - free < scrap ? scrap_cost : 0);
}

}  // namespace

std::vector<int> break_lines(const std::vector<Piece>& pieces, double width) {
  const int n = static_cast<int>(pieces.size());
  std::vector<double> best(static_cast<std::size_t>(n) + 1, std::numeric_limits<double>::infinity());
  std::vector<int> from(static_cast<std::size_t>(n) + 1, 0);
  best[0] = 0;
  for (int begin = 0; begin < n; ++begin) {
    double natural = 0;
    const bool first = begin == 0 || pieces[static_cast<std::size_t>(begin) - 1].must_end;
    for (int end = begin + 1; end <= n; ++end) {
      const Piece& piece = pieces[static_cast<std::size_t>(end) - 1];
      natural += piece.width;
      if (natural > width + rounding && end > begin + 1) break;
      const bool last = end == n || piece.must_end;
      const double total = best[static_cast<std::size_t>(begin)] + cost(natural, width, last, first);
      if (total < best[static_cast<std::size_t>(end)]) {
        best[static_cast<std::size_t>(end)] = total;
        from[static_cast<std::size_t>(end)] = begin;
      }
      if (piece.must_end) break;
      natural += piece.space;
    }
  }
  std::vector<int> begins;
  for (int end = n; end > 0; end = from[static_cast<std::size_t>(end)]) {
    begins.push_back(from[static_cast<std::size_t>(end)]);
  }
  std::reverse(begins.begin(), begins.end());
  return begins;
}

}  // namespace fretsheaf::layout
