#pragma once

#include "exchange/losses.h"
#include "exchange/taken.h"

namespace fretsheaf::exchange {

// What stands before the music. A second creator is a loss.
TakenHeading take_heading(const Xml& root, Losses& losses);

}  // namespace fretsheaf::exchange
