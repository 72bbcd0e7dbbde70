#pragma once

#include <optional>

#include "exchange/taken.h"
#include "theory/interval.h"

namespace fretsheaf::exchange {

// The chord that a <harmony> means, moved by the part's transposition; nullopt where the lesson format has none like
// it.
std::optional<theory::ChordToken> chord_of(const Xml& harmony, theory::Interval transposed);

}  // namespace fretsheaf::exchange
