#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("bars add up to their meter") {
  check({
      {"count | (1) 2 | 2 3 |\n"
       "G     |     4 | 3   |\n",
       {"1:17: error: this bar begins at `2`: 1 count short of 4/4; write `1` where the note before goes on, `(1)` for "
        "a rest; only the first bar, or one after `||`, `|:` or `:|`, may begin later"}},
      {"count | (1) 2 | 1 | 4 & |\n"
       "G     |     4 | 3 | 3   |\n",
       {"1:21: error: this bar begins at `4`: 3 counts short of 4/4; write `1` where the note before goes on, `(1)` "
        "for a rest; only the first bar, or one after `||`, `|:` or `:|`, may begin later"}},
      {"count | 1 |   | 1 |\n"
       "G     | 0 |   | 0 |\n",
       {"1:12: error: this bar has no counts; write `1` where the note before goes on, `(1)` for a rest, `%` to repeat "
        "the bar before"}},
      {"count | 1 || 2 | 1 |\n"
       "G     | 0 || 3 | 0 |\n",
       {}},
      {"count | 1 2 | 1 |\n"
       "G     |   3 | 0 |\n",
       {"1:9: error: there is nothing before `1` to hold; write `(1)` for a rest, or a note under it"}},
      {"count | 1   | 1 |\n"
       "G     |     |   |\n",
       {"1:9: error: there is nothing before `1` to hold; write `(1)` for a rest, or a note under it"}},
  });
}

TEST_CASE("pickups and bars that begin late") {
  check({
      {"count | 4 & |\n"
       "G     |     |\n",
       {"1:9: error: there is nothing before `4` to hold; write `(4)` for a rest, or a note under it"}},
      {"count | 3 4 | 1 2 3 4 | 1 2 3 4 :|\n"
       "G     |   3 | 5       | 5        |\n",
       {"1:31: error: `4` is cut off: this bar ends 1 count early, as its `:|` goes back to the pickup; take out what "
        "is written there, or write the later bar from its 1"}},
      {"count | 3 4 | 1 2 3 4 || 4 | 1 2 3 4 |\n"
       "G     |   3 | 5       || 5 | 5       |\n",
       {"1:21: error: `4` is cut off: this bar ends 1 count early, as the next bar begins late; take out what is "
        "written there, or write the later bar from its 1"}},
      {"count | 4 & | 1 2 3 :| 4 | 1 2 3 4 |\n"
       "G     |   3 | 5 5    | 3 | 5       |\n",
       {"1:17: warning: the note at `2` is held over beat 4, which is not written; this strip's other bars write every "
        "beat: write `4` to hold it, or `(4)` for a rest",
        "1:24: error: the bar before would end twice: here, at `4`, and 1/2 count early, as its `:|` goes back to the "
        "pickup; begin this bar where the repeated part begins"}},
      {"count | 1 2 |: 4 & :| 1 |\n"
       "G     | 3   |    3  | 5 |\n",
       {"1:15: error: nothing is left of this bar; the bar that begins late after it, or at its repeat's start, takes "
        "all of 4/4"}},
      {"count | 4 :| 1 |\n"
       "G     | 3  | 5 |\n",
       {"1:8: error: nothing is left of this bar; the bar that begins late after it, or at its repeat's start, takes "
        "all of 4/4"}},
      {"count | 1 2 || 3   | 1 |\n"
       "meter |     || 3/4 |   |\n"
       "G     | 3   || 5   | 4 |\n",
       {"1:22: warning: the note at `1` is held over beat 2, which is not written; this strip's other bars write every "
        "beat: write `2` to hold it, or `(2)` for a rest",
        "2:16: error: a meter cannot change inside a bar; this bar completes the one before: write the meter at the "
        "next bar that starts at 1"}},
      {"count | 4 &  | 1 |\n"
       "G     |   5  | 7 |\n"
       "chord | Am   | C |\n"
       "mark  | p    |   |\n",
       {"3:9: error: `Am` stands at `4`, before this bar's first note; the bar begins late, at its first note or rest: "
        "move the word there, or write a rest, `(4)`",
        "4:9: error: this mark stands before the bar's first note; the bar begins late, at its first note or rest: "
        "move the mark there"}},
  });
}

TEST_CASE("repeated bars") {
  check({
      {"count | % | 1 |\n"
       "G     |   | 0 |\n",
       {"1:9: error: there is no bar before to repeat; write this bar's counts"}},
      {"count | 1 | % 2 | 1 |\n"
       "G     | 0 |     | 0 |\n",
       {"1:13: error: `%` stands beside counts; `%` alone repeats the bar before; write `%` or the counts"}},
      {"count | 4 | 1 2 3 4 | % | % :|\n"
       "G     | 3 | 5       |   |   |\n",
       {"1:27: error: this bar ends 1 count early, and cannot repeat the bar before; write its counts instead of `%`"}},
      {"count | 1 2 3 4 | %   |\n"
       "meter |         | 3/4 |\n"
       "G     | 3       |     |\n",
       {"1:19: error: the bar before lasts 4 counts, this one 3 counts; `%` repeats a bar of the same length: write "
        "this bar's counts"}},
      {"count | 1 2 3 4 | %   |\n"
       "meter |         | 3/8 |\n"
       "G     | 3       |     |\n",
       {"1:19: error: the bar before is in 4/4, this one in 3/8; `%` repeats a bar of the same length: write this "
        "bar's counts"}},
      {"count | 4 | % |\n"
       "G     | 3 |   |\n",
       {"1:13: error: the bar before lasts 1 count, this one 4 counts; `%` repeats a bar of the same length: write "
        "this bar's counts"}},
      {"count | 1 2 3 4 | 1  2 3 4 | % |\n"
       "G     | 5       |h7 h8     |   |\n",
       {"1:30: error: the bar before cannot be repeated here: `h` leads up, but the note before on this string is at "
        "fret 8; write this bar's counts instead of `%`"}},
      {"count | 1 2 3 4 | %       | 1 2 3 4 |\n"
       "G     | 5 5 5 5 |  7      | 5 5     |\n"
       "mark  |         | fermata |         |\n"
       "finger|         |  1      |         |\n"
       "chord |         |  C   G  |         |\n",
       {"2:20: error: a note stands in a bar that repeats the one before; write counts instead of `%`, or leave the "
        "string rows empty here",
        "3:19: error: a fermata stands in a bar that repeats the one before; write counts instead of `%`",
        "4:20: error: this finger row says something in a bar that repeats the one before; write counts instead of "
        "`%`, or leave this row empty here",
        "5:24: error: `G` is the second chord of a repeated bar; what stands in a `%` bar belongs to its first beat; "
        "write counts instead of `%`"}},
  });
}

TEST_CASE("where every bar has more counts than the meter, the meter is the slip") {
  check({
      {"count | 1 2 3 4 | 1 2   4 |\n"
       "G     | 0       | 0       |\n",
       {"1:15: error: every bar here counts to 4, but the meter is 3/4; write the meter that these bars have, such as "
        "meter = \"4/4\""},
       {.meter = "3/4"}},
      {"count | 1 2 3 4 | 1 2 3 |\n"
       "G     | 0       | 0     |\n",
       {"1:15: error: this bar counts to 4: 1 count more than 3/4 has; end the bar before, or write its meter in a "
        "`meter` row; frets stand in string rows"},
       {.meter = "3/4"}},
  });
}

TEST_CASE("meters") {
  check({
      {"count | 1 2 3  | 1    | 1   2 |\n"
       "meter | 3/4    | 5/7  |   3/4 |\n"
       "G     | 3      | 5    | 4     |\n",
       {"2:18: error: `5/7` is no meter; write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64: `3/4`, `2+2+3/8`",
        "2:27: error: `3/4` stands under no count, between `1` and `2`; its first character decides: move it under one "
        "of them, or write its count"}},
      {"count | 1 2 3  | 1 2  |\n"
       "meter | 3/4    |   4/4|\n"
       "meter | 4/4    |      |\n"
       "G     | 3      | 5    |\n",
       {"1:18: warning: the note at `1` is held over beat 3, which is not written; this strip's other bars write every "
        "beat: write `3` to hold it, or `(3)` for a rest",
        "2:20: error: a meter cannot change inside a bar; write it under the bar's first count",
        "3:9: error: `4/4` is the second meter of this bar; write one meter a bar"}},
      {"count | 1 2 3  | 1    | 1    |\n"
       "meter | 65/4   | 4    | 0/4  |\n"
       "G     | 3      | 5    | 5    |\n",
       {"2:9: error: `65/4` is no meter; write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64: `3/4`, `2+2+3/8`",
        "2:18: error: `4` is no meter; write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64: `3/4`, `2+2+3/8`",
        "2:25: error: `0/4` is no meter; write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64: `3/4`, `2+2+3/8`"}},
  });
}

TEST_CASE("a last note over beats that are not written") {
  check({
      {"count | 1 2 3 4 | 1 2 3   |\n"
       "G     | 3       | 3   5   |\n",
       {"1:23: warning: the note at `3` is held over beat 4, which is not written; this strip's other bars write every "
        "beat: write `4` to hold it, or `(4)` for a rest"}},
      {"count | 1 2 3 4 | 1 2 (3) |\n"
       "G     | 3       | 3       |\n",
       {}},
      {"count | 1 2 3 4 | 1       |\n"
       "G     | 3       |         |\n",
       {}},
      {"count | 1 2 3 4 | 1 2 | 1 2 |\n"
       "G     | 3       | 3 5 | 3 5 |\n",
       {}},
      {"count | 1 2 3 4 5 6 | 1 3 4 |\n"
       "G     | 3           | 3   5 |\n",
       {"1:27: warning: the note at `4` is held over beat 5, which is not written; this strip's other bars write every "
        "beat: write `5` to hold it, or `(5)` for a rest"},
       {.meter = "6/8"}},
      {"count | 1 2 3 4 | 1 & 2 & 3 & |\n"
       "G     | 3       | 3 4 3 4 3 4 |\n",
       {"1:29: warning: the note at `&` is held over beat 4, which is not written; this strip's other bars write every "
        "beat: write `4` to hold it, or `(4)` for a rest"}},
  });
}
