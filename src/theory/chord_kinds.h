#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "theory/chord.h"

namespace fretsheaf::theory {

// All that is particular to one kind of chord, in one place.
struct ChordKindEntry {
  ChordKind kind;
  std::string_view suffix;        // after the root, as we write it
  std::string_view other_suffix;  // what it may be written as too; empty where nothing is
  std::string_view tones;         // its degrees, spaces between
  std::string_view on_line;       // the symbol's part on the line
  std::string_view raised;        // and the raised one
};

std::span<const ChordKindEntry> chord_kinds();
const ChordKindEntry& entry_of(ChordKind kind);
std::vector<Degree> tones_of(const ChordKindEntry& entry);

// A degree of a chord: as parse_degree reads it, but 9, 11 and 13 keep their numbers.
Degree chord_degree(std::string_view text);

}  // namespace fretsheaf::theory
