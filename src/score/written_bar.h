#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "lesson/music.h"
#include "score/metric_tree.h"
#include "score/score.h"

namespace fretsheaf::score {

// A written value of a bar, and the event that it is of.
struct Symbol {
  std::size_t source = 0;  // index into the lesson's events
  Rational at;
  Rational length;
  NoteValue value;
  std::optional<int> tuplet;
  bool whole_bar_rest = false;
  bool first = true;  // of the event's symbols
  bool last = true;
};

struct WrittenBar {
  std::vector<Symbol> symbols;
  std::vector<Tuplet> tuplets;          // all with brackets still
  std::vector<std::size_t> unwritable;  // events that no written values can last as long as
};

// `tree` is the bar's metric tree.
WrittenBar write_bar(const lesson::Bar& bar, const MetricSpan& tree);

}  // namespace fretsheaf::score
