#pragma once

#include "platform/descriptor.h"

namespace fretsheaf::platform {

// A bell between threads for one that waits on descriptors: rung by any thread, it makes a descriptor readable until it
// is silenced.
class Wake {
 public:
  Wake();
  int descriptor() const { return descriptor_.number(); }
  void ring() const;
  void silence() const;

 private:
  Descriptor descriptor_;
};

}  // namespace fretsheaf::platform
