#include "source/nearest.h"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "source/utf8.h"

namespace fretsheaf::source {
namespace {

// Distances are counted in halves, so that a difference of case can be one of them.
constexpr int whole = 2;
constexpr int half = 1;

char32_t lower(char32_t letter) {
  return letter >= U'A' && letter <= U'Z' ? letter + (U'a' - U'A') : letter;
}

int replacing(char32_t a, char32_t b) {
  if (a == b) return 0;
  return lower(a) == lower(b) ? half : whole;
}

// The edit distance in which no stretch is edited twice (optimal string alignment).
int distance(const std::u32string& a, const std::u32string& b) {
  std::vector<std::vector<int>> cost(a.size() + 1, std::vector<int>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) cost[i][0] = whole * static_cast<int>(i);
  for (std::size_t j = 0; j <= b.size(); ++j) cost[0][j] = whole * static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      int best = cost[i - 1][j - 1] + replacing(a[i - 1], b[j - 1]);
      best = std::min({best, cost[i - 1][j] + whole, cost[i][j - 1] + whole});
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1])) {
        const int cases = replacing(a[i - 1], b[j - 2]) + replacing(a[i - 2], b[j - 1]);
        best = std::min(best, cost[i - 2][j - 2] + whole + cases);
      }
      cost[i][j] = best;
    }
  }
  return cost[a.size()][b.size()];
}

// A slip leaves most of the word as it was meant, and always something of it.
bool is_slip(int cost, std::size_t written, std::size_t meant) {
  const int length = static_cast<int>(written);
  const bool near = cost <= whole || 3 * cost <= whole * length;
  return near && cost < whole * static_cast<int>(std::max(written, meant));
}

bool same_but_for_case(const std::u32string& a, const std::u32string& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char32_t x, char32_t y) { return lower(x) == lower(y); });
}

}  // namespace

std::string nearest(std::string_view word, std::span<const std::string_view> known) {
  // Longer than this is no slip for any word that there is; it also bounds the work.
  constexpr std::size_t longest = 64;
  if (word.size() > 4 * longest) return {};
  const std::u32string written = from_utf8(word);
  if (written.size() > longest) return {};
  std::string_view best;
  int least = -1;
  for (const std::string_view candidate : known) {
    const std::u32string meant = from_utf8(candidate);
    const int cost = distance(written, meant);
    const bool near = same_but_for_case(written, meant) || is_slip(cost, written.size(), meant.size());
    if (near && (least < 0 || cost < least)) {
      least = cost;
      best = candidate;
    }
  }
  return std::string(best);
}

}  // namespace fretsheaf::source
