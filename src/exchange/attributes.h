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
  bool staves = false;  // written
  bool slashes = false;
  bool bar_repeat = false;
};

// Writes the <attributes> that are new in this bar: divisions, key, meter, staves with their tuning and transposition,
// slash notation, bar-repeat signs.
void write_attributes(Element measure, const Part& part, int bar, Running& running);

}  // namespace fretsheaf::exchange
