#pragma once

#include <string>
#include <vector>

#include "lesson/grid_labels.h"
#include "lesson/grid_rows.h"

namespace fretsheaf::lesson {

// The rows that stand together, as they are written.
struct WrittenStrip {
  std::vector<GridRow> rows;
  std::vector<StringLabel> string_labels;  // of its string rows, known or not
  Range first_line;
  bool foreign = false;        // one of its string labels is no string of the instrument
  bool unclear = false;        // it has a row that could not be told, which was reported
  bool guessed_count = false;  // a row of it had no label, and is taken for the count row
  std::size_t lines = 0;       // rows or not

  bool has_count() const;
};

// Checks each strip's rows against each other. Rows that a blank line parts from their count row are said to be so and
// go back to it.
std::vector<Strip> settle_strips(const GridInput& input, std::vector<WrittenStrip> written,
                                 const std::vector<std::string>& strings);

}  // namespace fretsheaf::lesson
