#pragma once

#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "platform/machine.h"
#include "sheaf/order.h"

namespace fretsheaf::sheaf {

// What a run holds while it works in a folder: a whole run the folder's lock alone; a share its own lock alone, and the
// folder's with others; a single job only that with others. So a whole run keeps everybody out, and two shares do not
// wait for each other. The error is what a teacher reads.
struct Locks {
  std::vector<std::unique_ptr<platform::Hold>> held;
};
std::variant<Locks, std::string> take_locks(const std::string& record_folder, const std::string& root,
                                            const Order& order, platform::Machine& system);

}  // namespace fretsheaf::sheaf
