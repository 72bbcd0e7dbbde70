#pragma once

#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// What the measure before says, so that only what changes is said again.
struct Running {
  bool first_example = true;
  std::int64_t divisions = 0;
  theory::Feel feel = theory::Feel::straight;
  std::optional<theory::Key> key;
  std::optional<theory::Meter> meter;
  std::vector<StaffKind> staves;
};

// Writes bar `bar` of the example as a <measure> of the part.
void write_measure(Element part_element, const Part& part, int bar, Running& running);

}  // namespace fretsheaf::exchange
