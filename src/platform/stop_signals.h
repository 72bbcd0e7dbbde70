#pragma once

#include <signal.h>

#include "platform/descriptor.h"

namespace fretsheaf::platform {

// As long as it lives, the signals that ask a program to stop (SIGINT, SIGTERM, SIGHUP) end nothing by themselves but
// make a descriptor readable. Those that the program was started to ignore stay ignored. One at a time.
class StopSignals {
 public:
  StopSignals();
  StopSignals(const StopSignals&) = delete;
  StopSignals& operator=(const StopSignals&) = delete;
  ~StopSignals();

  int descriptor() const { return descriptor_.number(); }
  // Whether one has come; from then on always.
  bool came();

 private:
  sigset_t before_{};
  Descriptor descriptor_;
  bool came_ = false;
};

}  // namespace fretsheaf::platform
