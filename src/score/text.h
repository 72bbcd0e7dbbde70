#pragma once

#include <optional>
#include <string>
#include <vector>

#include "source/range.h"

// Printed texts: CommonMark read, `{{…}}` filled in, as runs and blocks in no medium.
namespace fretsheaf::score {

// Words in one style. Accidentals are the characters ♭ ♮ ♯ (U+266D to U+266F): whoever sets them takes the music font.
struct Run {
  std::string text;  // UTF-8; a hard line break is "\n"
  bool emphasis = false;
  bool strong = false;
  bool code = false;
  std::optional<std::string> link;

  bool operator==(const Run&) const = default;
};
using Runs = std::vector<Run>;

struct Block {
  enum class Kind { paragraph, heading, list_item, quote, rule };
  Kind kind = Kind::paragraph;
  int level = 0;    // a heading's; of lists and quotes how deep they lie (1 is the outermost)
  int ordinal = 0;  // a numbered item's number; 0 for a bullet
  Runs runs;

  bool operator==(const Block&) const = default;
};
using Blocks = std::vector<Block>;

std::string plain(const Runs& runs);

}  // namespace fretsheaf::score
