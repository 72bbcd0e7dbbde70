#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("marks") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | mf     cresc  f---   sffz   |\n",
       {"3:17: error: there is no mark `cresc`; marks are `ppp` to `fff`, `sfz`, `fermata`, hairpins `<---` and "
        "`>---`, and `PM---`, `let---`, `TP---`",
        "3:24: error: `f` takes no dashes; dashes follow `<`, `>`, `PM`, `let` and `TP` only",
        "3:31: error: there is no mark `sffz`; did you mean `sfz`?"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | <---   >      PM     let--- |\n",
       {"3:17: error: this hairpin has no length; draw it with dashes to the last count that it reaches: `>---`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | <<<<<<<<<<<<  >>>>>>>       |\n",
       {"3:10: error: there is no mark `<<<<<<<<<<<<`; marks are `ppp` to `fff`, `sfz`, `fermata`, hairpins `<---` and "
        "`>---`, and `PM---`, `let---`, `TP---`",
        "3:24: error: there is no mark `>>>>>>>`; marks are `ppp` to `fff`, `sfz`, `fermata`, hairpins `<---` and "
        "`>---`, and `PM---`, `let---`, `TP---`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | <      p      ---    TP     |\n",
       {"3:10: error: this hairpin has no length; draw it with dashes to the last count that it reaches: `<---`",
        "3:24: error: these dashes go on from nothing; they follow a mark, `<---` or `PM---`, or stand at a bar's "
        "start after one"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | f      fff    MF     sfz    |\n"
       "mark   | p      sfz                  |\n",
       {"3:24: error: there is no mark `MF`; did you mean `mf`?",
        "4:10: error: `p` is the second dynamic at one count; write one"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | -------      <-----f        |\n",
       {"3:10: error: these dashes go on from nothing; they follow a mark, `<---` or `PM---`, or stand at a bar's "
        "start after one",
        "3:23: error: `<-----` stands under no count, between `2` and `3`; its first character decides: move it under "
        "one of them, or write its count",
        "3:29: error: `f` stands under no count, between `3` and `4`; its first character decides: move it under one "
        "of them, or write its count"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "mark   | <--- --- --- f  >           |\n",
       {"3:23: error: `f` stands under no count, between `2` and `3`; its first character decides: move it under one "
        "of them, or write its count",
        "3:26: error: `>` stands under no count, between `3` and `4`; its first character decides: move it under one "
        "of them, or write its count"}},
      {"count | 1 2 3 4 | 1 2 3 4 | 1 2 3 4 |\n"
       "G     | 5 5 5 5 | 5 5     | 5       |\n"
       "mark  |   <-----|---- p   | -       |\n",
       {"3:29: error: these dashes go on from nothing; they follow a mark, `<---` or `PM---`, or stand at a bar's "
        "start after one"}},
      {"count | 1 2 3 4 |\n"
       "mark  |   <-----|\n"
       "G     | 5 5 5 5 |\n"
       "\n"
       "count | 1 2 3 4 |\n"
       "G     | 5 5 5 5 |\n"
       "\n"
       "count | 1 2 3 4 |\n"
       "mark  | --      |\n"
       "G     | 5 5 5 5 |\n",
       {"9:9: error: these dashes go on from nothing; they follow a mark, `<---` or `PM---`, or stand at a bar's start "
        "after one"}},
  });
}
