#pragma once

#include <optional>
#include <string>

#include "score/score.h"
#include "spoken/phrases.h"
#include "theory/chord.h"

namespace fretsheaf::spoken {

// "D minor 7", "B flat 7, flat 9 over D"
std::string chord_name(const theory::Chord& chord, const Phrases& phrases);

// "chord D minor 7", "no chord"; with a capo also what the hand holds.
std::string chord_said(const score::ChordMark& mark, const Phrases& phrases);

}  // namespace fretsheaf::spoken
