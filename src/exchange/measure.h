#pragma once

#include "exchange/attributes.h"
#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// Writes bar `bar` of the example as a <measure> of the part.
void write_measure(Element part_element, const Part& part, int bar, Running& running);

}  // namespace fretsheaf::exchange
