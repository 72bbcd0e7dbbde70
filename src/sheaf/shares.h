#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sheaf/order.h"

namespace fretsheaf::sheaf {

// A job that is to be given to one of several machines: what it is called by, and how much there is of it (the bytes of
// its lesson tell well enough).
struct Load {
  std::string job;
  std::uint64_t weight = 0;
};

// The share, from 1, of each job, by what the jobs are and by nothing else: every machine that sees the same course
// comes to the same shares, whatever is made already. The heaviest is given first, each to the share that has least.
std::vector<int> shares_of(const std::vector<Load>& loads, int shares);

}  // namespace fretsheaf::sheaf
