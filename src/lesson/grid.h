#pragma once

#include <optional>

#include "fretboard/neck.h"
#include "lesson/music.h"
#include "source/diagnostic.h"
#include "source/text.h"
#include "theory/key.h"
#include "theory/meter.h"

namespace fretsheaf::lesson {

// What a grid is read against.
struct GridContext {
  const fretboard::Neck& neck;
  theory::Key key;                // numerals are checked in it
  theory::Meter meter;            // until a meter row says otherwise
  bool vary = false;              // no string rows; struck counts are slots for another example's notes
  std::optional<Range> tuning{};  // where the neck's tuning is written; nullopt where it is an instrument's own
};

// Reads the grid that lies at `grid` in the file (the bytes between the quotes): strips, rows, tokens, then the bars
// that they make. Reports everything that is wrong and returns what could be read; the result is sound music only where
// no error was reported.
Music read_grid(const source::Text& text, Range grid, const GridContext& context, source::Diagnostics& diagnostics);

}  // namespace fretsheaf::lesson
