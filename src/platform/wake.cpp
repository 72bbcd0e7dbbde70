#include "platform/wake.h"

#include <sys/eventfd.h>

namespace fretsheaf::platform {

Wake::Wake() : descriptor_(::eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK)) {}

void Wake::ring() const {
  ::eventfd_write(descriptor_.number(), 1);  // fails only where it has been rung some 2^64 times
}

void Wake::silence() const {
  eventfd_t rung = 0;
  ::eventfd_read(descriptor_.number(), &rung);
}

}  // namespace fretsheaf::platform
