#pragma once

#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// What happens in a section, in order and without gaps from each measure's start to its end: tied symbols as one, notes
// held on, rests, grace notes with the note that they lead to, and which note is joined to which. Slurs that no
// hammer-on or pull-off stands for are losses, ties with no partner, too.
std::vector<Happening> happenings_of(const AdoptContext& context, const Section& section,
                                     const std::vector<std::vector<Symbol>>& line,
                                     const std::vector<Rational>& lengths);

}  // namespace fretsheaf::exchange
