#include "sheaf/shares.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

using namespace fretsheaf::sheaf;

namespace {

std::vector<Load> course(int lessons, int keys) {
  std::vector<Load> loads;
  for (int lesson = 0; lesson < lessons; ++lesson) {
    for (int key = 0; key < keys; ++key) {
      loads.push_back({"lesson-" + std::to_string(lesson) + ".key-" + std::to_string(key),
                       static_cast<std::uint64_t>(1000 + lesson * 37 % 900)});
    }
  }
  return loads;
}

}  // namespace

TEST_CASE("shares are even, by weight and by number") {
  const std::vector<Load> loads = course(40, 12);
  for (const int of : {1, 2, 3, 7, 16}) {
    const std::vector<int> shares = shares_of(loads, of);
    std::map<int, std::uint64_t> weights;
    std::map<int, int> counts;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      weights[shares[i]] += loads[i].weight;
      ++counts[shares[i]];
    }
    CAPTURE(of);
    REQUIRE(static_cast<int>(weights.size()) == of);
    CHECK((weights.begin()->first == 1 && weights.rbegin()->first == of));
    const auto by_size = [](const auto& a, const auto& b) { return a.second < b.second; };
    const auto [least, most] = std::minmax_element(weights.begin(), weights.end(), by_size);
    CHECK(most->second - least->second <= 1900);  // the heaviest job
    const auto [fewest, most_jobs] = std::minmax_element(counts.begin(), counts.end(), by_size);
    CHECK(most_jobs->second - fewest->second <= std::max(2, fewest->second / 5));
  }
}

TEST_CASE("shares hang on what the jobs are, not on the order in which they were found") {
  const std::vector<Load> loads = course(20, 3);
  std::vector<Load> backwards(loads.rbegin(), loads.rend());
  const std::vector<int> shares = shares_of(loads, 5);
  std::vector<int> again = shares_of(backwards, 5);
  std::reverse(again.begin(), again.end());
  CHECK(again == shares);
}

TEST_CASE("with more shares than jobs some have nothing") {
  std::vector<int> shares = shares_of(course(1, 3), 8);
  std::sort(shares.begin(), shares.end());
  CHECK(shares == std::vector<int>{1, 2, 3});
  CHECK(shares_of({}, 4).empty());
}
