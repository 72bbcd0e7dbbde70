#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("fingers, hands, spellings and strokes") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "finger | 1      5      T      1,2    |\n",
       {"3:17: error: `5` is no word of a finger row; fingers are `0` to `4` and `T`; for a chord one a string, joined "
        "by commas: `1,2,3`",
        "3:31: error: 2 words for 1 note at `4`; write one word alone, without a comma"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      =      |\n"
       "D      | 5      =                    |\n"
       "finger | 1,2    1      1      1      |\n",
       {"4:31: error: nothing is struck at `4`; a finger belongs to a note: move it, or take it out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7             =      |\n"
       "hand   | p      x      p             |\n",
       {"3:17: error: `x` is no word of a hand row; the plucking hand is `p`, `i`, `m`, `a`, `T` (thumb slap) or `P` "
        "(pop); for a chord one a string, joined by commas: `p,i`",
        "3:24: error: nothing is struck at `3`; a hand's word belongs to a note: move it, or take it out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "spell  | C      Db     C      H      |\n",
       {"3:17: error: `Db` is not the note that is played here; a spelling names the same sound: `Db` or `C#`",
        "3:31: error: `H` is no word of a spell row; write a note's name, `Db` or `F#`; for a chord one a string, "
        "joined by commas"}},
      {"count  | 1      2      3      4      |\n"
       "G      | x      5                    |\n"
       "spell  | G      C                    |\n",
       {"3:10: error: a dead note has no name; a spelling names the same sound: `Db` or `C#`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "stroke | d      u      x      D      |\n",
       {"3:24: error: `x` is no word of a stroke row; strokes are `d` down and `u` up",
        "3:31: error: `D` is no word of a stroke row; strokes are `d` down and `u` up"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5                           |\n"
       "stroke | d      u                    |\n",
       {"3:17: error: nothing is struck at `2`; a stroke belongs to a note: move it, or take it out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "finger | 1      1                    |\n"
       "finger | 2                           |\n",
       {"4:10: error: `2` is the second word at `1` in a finger row; fingers are `0` to `4` and `T`; for a chord one a "
        "string, joined by commas: `1,2,3`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "stroke | d      d                    |\n"
       "stroke | u                           |\n",
       {"4:10: error: `u` is the second word at `1` in a stroke row; strokes are `d` down and `u` up"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "finger | 1,     ,1     1,,2          |\n",
       {"3:10: error: `,` is no word of a finger row; fingers are `0` to `4` and `T`; for a chord one a string, joined "
        "by commas: `1,2,3`",
        "3:17: error: `,` is no word of a finger row; fingers are `0` to `4` and `T`; for a chord one a string, joined "
        "by commas: `1,2,3`",
        "3:24: error: `,` is no word of a finger row; fingers are `0` to `4` and `T`; for a chord one a string, joined "
        "by commas: `1,2,3`"}},
  });
}

TEST_CASE("a play row") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "play   | *      *                    |\n",
       {"3:1: error: a play row stands beside string rows; in an example with string rows the frets say what is "
        "struck: take the play row out"}},
      {"count  | 1      2      3      4      |\n"
       "play   | *      +      >             |\n",
       {"2:17: error: `+` is no word of a play row; write `*` under a struck count, `x` for a muted strum, `>` for an "
        "accent, `(*)` for a ghost"}},
      {"count  | 1      2      3      4      |\n"
       "play   | *                           |\n"
       "play   | x                           |\n",
       {"3:10: error: `x` is the second word at `1` in a play row; write `*` under a struck count, `x` for a muted "
        "strum, `>` for an accent, `(*)` for a ghost"}},
      {"count | 1 (2) |\n"
       "play  | *  *  |\n",
       {"2:12: error: `*` stands under a rest, `(2)`; write the count without parentheses, or take the strum out"}},
      {"count  | 1      2      3      4      |\n"
       "play   |        *                    |\n",
       {"1:10: error: there is nothing before `1` to hold; write `(1)` for a rest, or a note under it"}},
      {"count  | 1      2      3      4      |\n"
       "finger | 1                           |\n"
       "hand   | p                           |\n",
       {"2:1: error: a finger row stands in an example without string rows; it belongs to notes; how a strum is struck "
        "is written in a `stroke` row",
        "3:1: error: a hand row stands in an example without string rows; it belongs to notes; how a strum is struck "
        "is written in a `stroke` row"}},
  });
}

TEST_CASE("a grid of counts for another example's notes") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n",
       {"2:1: error: a string row stands in an example that varies another; its notes come from there: mark where each "
        "falls with `*` in a `play` row"},
       {.vary = true}},
      {"count  | 1      2      3      4      |\n"
       "finger | 1                           |\n"
       "hand   | p                           |\n",
       {"2:1: error: a finger row stands in an example without string rows; fingers and spellings go with the notes: "
        "write them in the example that is varied"},
       {.vary = true}},
      {"count  | 1      2      3      4      |\n"
       "play   | *      *                    |\n"
       "hand   | p             i             |\n",
       {"3:24: error: nothing is struck at `3`; a hand's word belongs to a note: move it, or take it out"},
       {.vary = true}},
  });
}
