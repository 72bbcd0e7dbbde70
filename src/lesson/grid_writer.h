#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "lesson/grid.h"
#include "source/edit.h"

namespace fretsheaf::lesson {

// What is to stand differently in a grid, by where it was written: the offset in the file at which a note's or a word's
// range begins.
struct GridChange {
  // Notes with their new places; their signs stay as they are written.
  std::map<std::uint32_t, Note> notes;
  // Words of chord, text, finger and spell rows (all of a chord's words, with their commas, are one); an empty one is
  // taken out.
  std::map<std::uint32_t, std::string> words;

  bool empty() const { return notes.empty() && words.empty(); }
};

// Writes a grid's changed rows anew: each fret under its count, columns widened where a token needs more room (in all
// rows of the strip alike), string rows added where notes come to a string that has none, and those that lose all their
// notes taken out where the strip leaves out empty ones. Bytes that need not change stay, line ends too.
// REQUIRES: the grid was read against that context without errors.
std::vector<source::Edit> rewrite_grid(const source::Text& text, Range grid, const GridContext& context,
                                       const GridChange& change);

}  // namespace fretsheaf::lesson
