#pragma once

#include <string>
#include <vector>

#include "lesson/grid_rows.h"

// How a strip is widened. Columns are those of a GridRow.
namespace fretsheaf::lesson {

// Columns put in before columns of a strip.
class Widening {
 public:
  // REQUIRES: columns rise from call to call.
  void insert(int before, int columns);

  // Where a column lies afterwards.
  int moved(int column) const;
  int at(int column) const;  // how many are put in before it
  bool empty() const { return insertions_.empty(); }

 private:
  struct Insertion {
    int before = 0;
    int columns = 0;
    int total = 0;  // with all before it
  };
  std::vector<Insertion> insertions_;
};

// A row of a strip, widened: blanks go between its words, or as soon after as a word ends; runs of dashes grow. In a
// row of counts, and among the filler of a string row, they may go anywhere.
std::u32string stretched(const std::u32string& row, bool anywhere, const Widening& widening);

}  // namespace fretsheaf::lesson
