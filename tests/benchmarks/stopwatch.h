#pragma once

#include <ctime>

namespace fretsheaf::benchmarks {

// Time of the processor, so that what else the machine does has no say.
inline double seconds_since(std::clock_t begin) {
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

}  // namespace fretsheaf::benchmarks
