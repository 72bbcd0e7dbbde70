#pragma once

#include "platform/machine.h"
#include "sheaf/places.h"
#include "sheaf/record.h"

namespace fretsheaf::sheaf {

// Whether the files of a handout are what the record says. One whose size and time are as recorded is; else, or where
// all is to be verified, its hash decides, and a new time is taken over into `entry`.
enum class Standing { current, current_with_new_times, different };
Standing standing(MadeEntry& entry, const Places& places, bool verify, const platform::Machine& system);

}  // namespace fretsheaf::sheaf
