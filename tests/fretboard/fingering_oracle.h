#pragma once

#include <cstdint>
#include <optional>

#include "fretboard/lines.h"

// What the cheapest fingering costs, found by trying every one: each place of each note, each fret where the hand may
// lie, each combination of them all. Rules and sum are written here a second time, from the words of the public
// headers; the weights alone are shared. For short lines.
namespace fretsheaf::fretboard {

// nullopt where the line has no fingering.
std::optional<std::int64_t> cheapest_of_all(const Line& line, const Played& on);

// What that fingering costs; nullopt where it breaks a rule.
std::optional<std::int64_t> cost_of(const Line& line, const Fingering& fingering, const Played& on);

}  // namespace fretsheaf::fretboard
