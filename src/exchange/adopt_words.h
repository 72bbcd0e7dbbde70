#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// Puts all that stands beside the notes of a section into its music, whose bars have their events: chords, dynamics,
// hairpins and their like, words, syllables, sections, ways, how often a repeat is played. Returns the section's name,
// where its first words are one that this program writes ("Example 2: The pulse").
std::optional<std::string> add_words(const AdoptContext& context, const Section& section,
                                     const std::vector<Happening>& happenings, lesson::Music& music);

}  // namespace fretsheaf::exchange
