#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "source/diagnostic.h"
#include "template/template.h"

namespace fretsheaf::templates {

// A measure as the table of measures knows it.
struct MeasureEntry {
  std::string_view group;
  std::string_view key;  // with `-`
  double Measures::*value;
  double least;
  double most;
};
// As many as there are lines in measures.def.
inline constexpr std::array all_measures = {
#define FRETSHEAF_MEASURE(group, name, ...) &Measures::name,
#include "template/measures.def"
#undef FRETSHEAF_MEASURE
};
inline constexpr int measure_count = static_cast<int>(all_measures.size());
const std::array<MeasureEntry, measure_count>& measure_entries();

// The keys at the top of a template's file that are no tables.
inline constexpr std::array<std::string_view, 12> top_keys = {
    "paper", "accent",   "least-type",  "two-sided", "cautions",    "one-thing-a-line",
    "head",  "top-line", "fact-labels", "facts",     "later-pages", "footer"};

// The keys of the roles, in the order of `Role`, with `-`.
const std::array<std::string_view, role_count>& role_keys();

// Where a template's values were written; an empty range for what it left to the music-stand.
struct Places {
  std::array<source::Range, measure_count> measures{};
  std::array<source::Range, role_count> sizes{};
  source::Range accent{};
  source::Range least_type{};
};

// What no single value shows: type below the least, gaps whose natural value is outside its own limits, an accent too
// pale for paper.
void check_template(const Template& look, const Places& places, source::Diagnostics& diagnostics);

// The contrast of a colour with white, from 1 (white) to 21 (black), as WCAG 2.2 defines it.
double contrast_with_white(Rgb color);

// "#095461"; nullopt where it is anything else.
std::optional<Rgb> parse_color(std::string_view text);

// A number as a teacher writes it: "8", "45.28".
std::string plain_number(double value);

}  // namespace fretsheaf::templates
