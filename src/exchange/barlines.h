#pragma once

#include "exchange/element.h"
#include "exchange/part.h"

namespace fretsheaf::exchange {

// The bar line before and after a bar with its ending and its repeat sign, where it is more than a plain one. Every
// repeat is written at both ends.
void write_left_barline(Element measure, const Part& part, int bar);
void write_right_barline(Element measure, const Part& part, int bar);

}  // namespace fretsheaf::exchange
