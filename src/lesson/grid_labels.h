#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lesson/grid_rows.h"

namespace fretsheaf::lesson {

struct RowLabel {
  RowKind kind = RowKind::count;
  int string = 0;
};

std::string_view row_name(RowKind kind);  // "count"; of a string row "string"

// What a label means, exactly or, for a string, in another case where that is clear. nullopt where it is unknown.
std::optional<RowLabel> find_label(std::string_view label, const std::vector<std::string>& strings);

// Whether a label can only be meant for a string: a number or a note's letter.
bool names_a_string(std::string_view label);

// The labels of one strip's string rows, known or not, as written.
struct StringLabel {
  std::string text;
  Range range;
};

// Reports labels that name no string of the instrument: as one slip where they are together another instrument's.
// REQUIRES: one of them at least is unknown.
void report_unknown_strings(const GridInput& input, const std::vector<StringLabel>& labels,
                            const std::vector<std::string>& strings);

// Reports an unknown label that names no string and gives the row that was most probably meant, so that reading can go
// on.
std::optional<RowLabel> report_unknown_label(const GridInput& input, std::string_view label, Range range,
                                             const std::vector<std::string>& strings);

// Rows that stand twice, and string rows out of the tab's order. Rows that are too many are taken out.
void check_labels(const GridInput& input, Strip& strip, const std::vector<std::string>& strings);

}  // namespace fretsheaf::lesson
