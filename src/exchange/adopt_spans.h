#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

struct SpanInput {
  const AdoptContext& context;
  const Section& section;
  const std::vector<Happening>& happenings;
  lesson::Music& music;
};

// Hairpins, palm mutes, let ring and tremolo, from the signs between the notes and from those on them.
void add_spans(const SpanInput& input);

// What words over a broken line mean: "P.M.", "let ring".
std::optional<lesson::SpanKind> span_name_of(const std::string& words);

}  // namespace fretsheaf::exchange
