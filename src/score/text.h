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

enum class Container { list, quote };

struct Block {
  enum class Kind {
    paragraph,
    heading,
    list_item,  // the first block of an item, which carries its mark
    code,       // its lines as they stand, in code runs
    rule        // a thematic break
  };
  Kind kind = Kind::paragraph;
  int level = 0;                 // a heading's
  std::optional<int> ordinal{};  // a numbered item's number; none for a bullet
  Runs runs{};
  std::vector<Container> inside{};  // what it lies in, outermost first: "> - tide" a list in a quote
  int opens = 0;                    // so many of those, from the innermost, begin with this block
  bool loose = false;               // an item of a list whose items stand apart

  bool operator==(const Block&) const = default;
};
using Blocks = std::vector<Block>;

std::string plain(const Runs& runs);

}  // namespace fretsheaf::score
