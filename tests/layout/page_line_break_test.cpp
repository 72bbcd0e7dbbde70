#include <catch2/catch.hpp>
#include <limits>
#include <vector>

#include "layout/line_break.h"
#include "support/dice.h"

using fretsheaf::layout::break_lines;
using fretsheaf::layout::Piece;

namespace {

double width_of(const std::vector<Piece>& pieces, std::size_t begin, std::size_t end) {
  double width = 0;
  for (std::size_t i = begin; i < end; ++i) width += pieces[i].width + (i + 1 < end ? pieces[i].space : 0);
  return width;
}

// The squared slack of all lines but the last.
double raggedness(const std::vector<Piece>& pieces, const std::vector<int>& begins, double width) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < begins.size(); ++i) {
    const double slack =
        width - width_of(pieces, static_cast<std::size_t>(begins[i]), static_cast<std::size_t>(begins[i + 1]));
    sum += slack * slack;
  }
  return sum;
}

}  // namespace

TEST_CASE("the textbook's four words break by the sum, not greedily") {
  // "aaa bb cc ddddd" in width 6 (the usual example for total-fit after Knuth and Plass): lines aaa / bb cc / ddddd
  // with squared slack 9 + 1 + 1, where greedy lines aaa bb / cc / ddddd have 0 + 16 + 1.
  const std::vector<Piece> words = {{3, 1, false}, {2, 1, false}, {2, 1, false}, {5, 1, false}};
  CHECK(break_lines(words, 6) == std::vector<int>{0, 1, 3});
}

TEST_CASE("a forced end ends the line and costs nothing") {
  const std::vector<Piece> words = {{3, 0, true}, {2, 1, false}, {2, 1, false}};
  CHECK(break_lines(words, 100) == std::vector<int>{0, 1});
}

TEST_CASE("the space at a line's end takes no room") {
  CHECK(break_lines({{5, 5, false}, {5, 5, false}}, 5) == std::vector<int>{0, 1});
  CHECK(break_lines({{5, 1, false}, {5, 50, false}}, 11) == std::vector<int>{0});
}

TEST_CASE("a piece too wide has a line of its own") {
  CHECK(break_lines({{2, 1, false}, {50, 1, false}, {2, 1, false}}, 10) == std::vector<int>{0, 1, 2});
}

TEST_CASE("random words: every line fits, and no other way is less ragged without more lines") {
  fretsheaf::test::Dice dice(3);
  for (int round = 0; round < 300; ++round) {
    std::vector<Piece> words;
    const int n = dice.between(2, 12);
    for (int i = 0; i < n; ++i) words.push_back({static_cast<double>(dice.between(1, 9)), 1, false});
    const double width = dice.between(10, 24);
    const std::vector<int> begins = break_lines(words, width);
    const double ours = raggedness(words, begins, width);
    double best = std::numeric_limits<double>::infinity();
    for (unsigned cuts = 0; cuts < (1U << (n - 1)); ++cuts) {
      std::vector<int> other = {0};
      for (int i = 0; i + 1 < n; ++i) {
        if ((cuts >> i & 1U) != 0) other.push_back(i + 1);
      }
      if (other.size() > begins.size()) continue;
      bool fits = true;
      for (std::size_t i = 0; i < other.size(); ++i) {
        const std::size_t end = i + 1 < other.size() ? static_cast<std::size_t>(other[i + 1]) : words.size();
        fits = fits && width_of(words, static_cast<std::size_t>(other[i]), end) <= width;
      }
      if (fits) best = std::min(best, raggedness(words, other, width));
    }
    for (std::size_t i = 0; i < begins.size(); ++i) {
      const std::size_t end = i + 1 < begins.size() ? static_cast<std::size_t>(begins[i + 1]) : words.size();
      CHECK(width_of(words, static_cast<std::size_t>(begins[i]), end) <= width);
    }
    // A scrap for a last line may be worth a little raggedness: 0.15 of the squared measure.
    CHECK(ours <= best + 0.15 * width * width + 1e-9);
  }
}
