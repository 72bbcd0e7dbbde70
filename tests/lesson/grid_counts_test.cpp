#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("every count of the format") {
  check({
      {"count | 1e&a 2la li3+1/5+2/5(4)+ |\n"
       "G     | 0     3  3 5    2      4 |\n",
       {}},
      {"count | 1 + 2 +1/2 3+2/3(+3/4) 4  |\n"
       "G     | 0 5 7 5    7 5            |\n",
       {}},
      {"count | 1 ( 2 ) ( 3) 4 |\n"
       "G     | 0            3 |\n",
       {}},
      {"count | 10 | 1 2 3 4 5 6 7 8 9 10 11 12 |\n"
       "G     | 5  | 1 2 3 4 5 6 7 8 9 10 11 12 |\n",
       {"1:9: warning: the note at `10` is held over beat 11, which is not written; this strip's other bars write "
        "every beat: write `11` to hold it, or `(11)` for a rest"},
       {.meter = "12/8"}},
      {"count | 1 2 3 4 5 6 7 |\n"
       "G     | 1 2 3 4 5 6 7 |\n",
       {},
       {.meter = "2+2+3/8"}},
  });
}

TEST_CASE("what is no count") {
  check({
      {"count | 0 1 2 |\n"
       "G     |   4   |\n",
       {"1:9: error: there is no count 0; the first count of a bar is 1; an open string's 0 goes in its string row"}},
      {"count | 1 and 2 ee & ah 3 trip let 4 |\n"
       "G     | 0     4         3            |\n",
       {"1:11: error: `and` is no count; write the half of a beat as `&`",
        "1:17: error: `ee` is no count; write the quarters of a beat as `e & a`",
        "1:22: error: `ah` is no count; write the quarters of a beat as `e & a`",
        "1:27: error: `trip` is no count; write the thirds of a beat as `la li`",
        "1:32: error: `let` is no count; write the thirds of a beat as `la li`"}},
      {"count | 1-2–3-4 | l 2 | x |\n"
       "G     | 0 2 3 4 | 0 3 | x |\n",
       {"1:10: error: a dash stands in the count row; leave spaces between counts: dashes are filler in string rows "
        "only",
        "1:19: error: `l` is no count; write the figure 1, not the letter l",
        "1:25: error: `x` is no count; a muted strum is written in a `play` row, a dead note in a string row"}},
      {"count | 1 e 2 E ta | 1 ? | 1 O |\n"
       "G     | 0          | 0   | 0   |\n",
       {"1:15: error: `E` is no count; counts are figures and, after them, `&`, `e & a`, `la li` or a fraction such as "
        "`+2/5`",
        "1:17: error: `ta` is no count; write the beats in figures and their halves as `&`",
        "1:24: error: `?` is no count; counts are figures and, after them, `&`, `e & a`, `la li` or a fraction such as "
        "`+2/5`",
        "1:30: error: `O` is no count; write a figure, not the letter O; counts begin at 1"}},
      {"count | 1 +5/4 2 +1/65 3 +0/4 4 +1/ |\n"
       "G     | 0                           |\n",
       {"1:11: error: `+5/4` is no part of a beat; write a fraction above 0 and below 1, over 64 at most: `+2/3`",
        "1:18: error: `+1/65` is no part of a beat; write a fraction above 0 and below 1, over 64 at most: `+2/3`",
        "1:26: error: `+0/4` is no part of a beat; write a fraction above 0 and below 1, over 64 at most: `+2/3`",
        "1:33: error: `+1/` is no part of a beat; write a fraction above 0 and below 1, over 64 at most: `+2/3`"}},
      {"count | 1 () (x) (4) |\n"
       "G     | 0            |\n",
       {"1:11: error: these parentheses hold no count; a rest is a count in parentheses: `(2)`",
        "1:15: error: `x` is no count; a muted strum is written in a `play` row, a dead note in a string row"}},
      {"count | 1 [2] 3 4 |\n"
       "G     | 0         |\n",
       {"1:11: error: `[2]` is no count; a rest is a count in parentheses: `(2)`"}},
      {"count | 1 (2 3) 4 |\n"
       "G     | 0       4 |\n",
       {"1:11: error: parentheses hold one count; write each rest in its own: `(2) (3)`"}},
      {"count | 1 (2&) 3 |\n"
       "G     | 0      4 |\n",
       {"1:11: error: parentheses hold one count; write each rest in its own: `(2) (3)`"}},
      {"count | 1 (2 4 |\n"
       "G     | 0    4 |\n",
       {"1:11: error: this parenthesis is never closed; a rest is a count in parentheses: `(2)`"}},
  });
}

TEST_CASE("counts rise") {
  check({
      {"count | 1 3 2 3 4 | 1 2 2 |\n"
       "G     | 0 4       | 5     |\n",
       {"1:11: error: `3` is no count between `1` and `2`; counts rise inside a bar; a fret stands in a string row",
        "1:25: error: `2` does not come after `2`; counts rise inside a bar; a bar line begins the next"}},
      {"count | 1 & & 2 |\n"
       "G     | 0 4   5 |\n",
       {"1:13: error: `&` does not come after `&`; counts rise inside a bar; a bar line begins the next"}},
      {"count | 1 a & 2 |\n"
       "G     | 0 4   5 |\n",
       {"1:13: error: `&` does not come after `a`; counts rise inside a bar; a bar line begins the next"}},
      {"count | 1 (&) & 2 |\n"
       "G     | 0       5 |\n",
       {"1:15: error: `&` does not come after `(&)`; counts rise inside a bar; a bar line begins the next"}},
      {"count | & 2 e | 1 | (e) |\n"
       "G     | 0 5 7 | 5 |     |\n",
       {"1:9: error: `&` has no figure before it in this bar; write the beat that it divides: `1 &`",
        "1:21: error: `(e)` has no figure before it in this bar; write the beat that it divides: `1 &`"}},
      {"count | 1 +1/3 la |\n"
       "G     | 0         |\n",
       {"1:16: error: `la` does not come after `+1/3`; counts rise inside a bar; a bar line begins the next"}},
  });
}

TEST_CASE("a count in the count row that is a fret or a bar line away") {
  check({
      {"count | 1 2 3 4 5 6 |\n"
       "G     | 0           |\n",
       {"1:17: error: this bar counts to 6: 2 counts more than 4/4 has; end the bar before, or write its meter in a "
        "`meter` row; frets stand in string rows"}},
      {"count | 1234 |\n"
       "G     | 0    |\n",
       {"1:9: error: `1234` is no count of 4/4; figures stand apart: `1 2 3 4`"}},
      {"count | 1 2 3 17 |\n"
       "G     | 0     5  |\n",
       {"1:15: error: `17` is no count of 4/4; figures stand apart: `1 2 3`; frets stand in string rows"}},
      {"count | 1 2 3 4 |\n"
       "G     | 0       |\n",
       {"1:15: error: this bar counts to 4: 1 count more than 3/4 has; end the bar before, or write its meter in a "
        "`meter` row; frets stand in string rows"},
       {.meter = "3/4"}},
      {"count | 1 2 7 8 9 |\n"
       "G     | 0         |\n",
       {"1:15: error: this bar counts to 9: 2 counts more than 2+2+3/8 has; end the bar before, or write its meter in "
        "a `meter` row; frets stand in string rows"},
       {.meter = "2+2+3/8"}},
  });
}
