#include "sheaf/shares.h"

#include <algorithm>
#include <numeric>
#include <queue>
#include <tuple>

#include "sheaf/print.h"

namespace fretsheaf::sheaf {

std::vector<int> shares_of(const std::vector<Load>& loads, int shares) {
  std::vector<Print> prints;
  prints.reserve(loads.size());
  for (const Load& load : loads) prints.push_back(print_of(load.job));
  std::vector<std::size_t> order(loads.size());
  std::iota(order.begin(), order.end(), 0);
  // Jobs of one weight are taken by their prints: in order of their names the keys of a lesson, which take unlike
  // times, would fall into step with the shares.
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tie(loads[b].weight, prints[a], loads[a].job) < std::tie(loads[a].weight, prints[b], loads[b].job);
  });

  using Filled = std::tuple<std::uint64_t, std::size_t, int>;  // weight, jobs, share: the least of all comes first
  std::priority_queue<Filled, std::vector<Filled>, std::greater<>> least;
  for (int share = 1; share <= shares; ++share) least.emplace(0, 0, share);
  std::vector<int> given(loads.size());
  for (const std::size_t job : order) {
    const auto [weight, jobs, share] = least.top();
    least.pop();
    given[job] = share;
    least.emplace(weight + loads[job].weight, jobs + 1, share);
  }
  return given;
}

}  // namespace fretsheaf::sheaf
