#pragma once

#include <optional>
#include <string>
#include <vector>

#include "score/text.h"

namespace fretsheaf::spoken {

// One thing that is told.
struct Piece {
  enum class Kind {
    heading,
    paragraph,
    lines,   // sentences that belong together, each on a line: a bar
    item,    // of a list
    code,    // lines as they stand
    table,   // a head row, then empty rows to write in
    divider  // between two thoughts
  };
  Kind kind = Kind::paragraph;
  score::Runs runs{};
  int level = 1;                     // a heading's, from 1
  std::optional<int> ordinal{};      // a numbered item's
  int depth = 0;                     // in so many lists; an item's own is one
  bool begins_list = false;          // an item: whatever list was open beside it ends before it
  bool quoted = false;               // it lies in a quote
  std::vector<std::string> cells{};  // a table's head, or the lines
  int rows = 0;                      // a table's empty rows
};

// A lesson in words, in the order of its pages.
struct Walk {
  std::string language;  // "en"
  std::string title;     // plain
  std::vector<Piece> pieces;
};

}  // namespace fretsheaf::spoken
