#pragma once

#include <optional>
#include <string>

#include "exchange/losses.h"
#include "exchange/taken.h"

namespace fretsheaf::exchange {

// The one part of a score, or the one that `wanted` names or numbers (from 1; empty: there must be one). Reports why
// where there is none to take; errors inside it are reported, too, and then what is returned is not sound.
std::optional<TakenPart> take_part(const Xml& root, const std::string& wanted, Losses& losses);

}  // namespace fretsheaf::exchange
