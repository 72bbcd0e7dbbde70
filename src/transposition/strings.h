#pragma once

#include <optional>
#include <vector>

#include "fretboard/neck.h"

namespace fretsheaf::transposition {

// For each string of a neck, from string 1, the one of another neck that takes its part; nullopt where none does.
using StringsThere = std::vector<std::optional<int>>;

// Strings take each other's part where one neck has all strings of the other, tuned alike and side by side: a bass
// with five has those of one with four, a guitar those of a baritone ukulele. Else every string is nullopt: a place on
// the one neck means nothing on the other.
StringsThere strings_there(const fretboard::Neck& from, const fretboard::Neck& to);

}  // namespace fretsheaf::transposition
