#pragma once

#include <string>
#include <vector>

namespace fretsheaf::benchmarks {

// What a run of a program took, with all the processes that it started.
struct Watched {
  double seconds = 0;
  double processor_seconds = 0;  // of all processes together; says more where the machine has other work
  double peak_megabytes = 0;     // of all processes together
  // From a tenth of the work to its end: of the process that was started, which knows every handout that there is, and
  // of the worker that grew most.
  double planner_growth_megabytes = 0;
  double worker_growth_megabytes = 0;
  int status = 0;
  double seconds_to_stop = 0;  // from the signal, where one was sent
};

// Runs it; its output goes nowhere. Where `stop_after` is not 0, it gets SIGINT after so many seconds.
Watched watch(const std::vector<std::string>& words, double stop_after = 0);

}  // namespace fretsheaf::benchmarks
