#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "theory/chord.h"

namespace fretsheaf::theory {

// The parts of parse_chord that chord symbols and numerals share.

struct ChordQuality {
  ChordKind kind = ChordKind::major;
  std::vector<Degree> alterations;
};

// Takes the longest kind and the alterations after it off the text's beginning. Fails, taking nothing, where an
// alteration stands on less than a seventh or says a tone a second time ("m7b5b5").
std::optional<ChordQuality> take_quality(std::string_view& text);

// The whole text as a chord symbol, or as a Roman numeral; else nullopt.
std::optional<Chord> parse_symbol(std::string_view text);
std::optional<RomanNumeral> parse_numeral(std::string_view text);

}  // namespace fretsheaf::theory
