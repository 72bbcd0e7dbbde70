#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheet/sheet.h"

namespace fretsheaf::layout {

// A group that blocks lie in: the list of a list item, the music of an example. Blocks that follow one another on a
// page and name the same `id` come into one group there.
struct Nest {
  int id = 0;
  sheet::Tag tag = sheet::Tag::none;
  std::optional<sheet::ExampleInfo> example;
  std::string alternative{};  // of a figure in several blocks
};

// A piece of a page that is never split: a paragraph's line, a heading, a line of music. Its items are placed relative
// to its own origin: x = 0 the text's left edge, y = 0 the line that the gap before it is counted to (a text's first
// baseline, the chord row's of a line of music); the page filler only chooses y.
struct Block {
  std::vector<sheet::Item> items;
  double height = 0;   // from the origin to the baseline or ink that the next gap is counted from
  double ascent = 0;   // ink above the origin (negative where the ink begins below it)
  double descent = 0;  // ink below `height`
  // The gap before it, from the line above's `height` to the origin, where it does not begin a page: natural, and how
  // far it may give way or grow. Where ink would come nearer than `clearance` to ink, the gap is wider.
  double gap = 0;
  double gap_least = 0;
  double gap_most = 0;
  double clearance = 0;
  bool keep_with_next = false;          // never parted from the next block
  double part_penalty = 0;              // how bad a page break after it is (0 natural; larger is worse)
  std::optional<std::string> bookmark;  // an outline entry that leads here
  // The groups it lies in, outermost first. Marks of list items (groups tagged so) lie each in its item, beside the
  // body that the rest is in: of the items named here, the last ones are theirs.
  std::vector<Nest> nests;
};
using Blocks = std::vector<Block>;

// Moves all that follows to the right.
void indent(Blocks& blocks, double by);

}  // namespace fretsheaf::layout
