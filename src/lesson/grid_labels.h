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

// Reports an unknown label and gives the row that was most probably meant, so that reading can go on.
std::optional<RowLabel> report_unknown_label(const GridInput& input, std::string_view label, Range range,
                                             const std::vector<std::string>& strings);

// Rows that stand twice, and string rows out of the tab's order. Rows that are too many are taken out.
void check_labels(const GridInput& input, Strip& strip, const std::vector<std::string>& strings);

}  // namespace fretsheaf::lesson
