#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("notes stand under counts") {
  check({
      {"count | 1   2 | 1 |\n"
       "G     | 0 3   | 0 |\n"
       "D     |4      |  5|\n",
       {"2:11: error: `3` stands under no count, between `1` and `2`; move it under one of them, or write its count",
        "3:8: error: `4` stands under no count, between the bar line and `1`; move it under one of them, or write its "
        "count",
        "3:18: error: `5` stands under no count, between `1` and the bar line; move it under one of them, or write its "
        "count"}},
      {"count | 1 (2) 3 | (1) |\n"
       "G     | 0  3  0 |  x  |\n",
       {"2:12: error: `3` stands under a rest, `(2)`, between `1` and `3`; write the count without parentheses, or "
        "move the note",
        "2:20: error: `x` stands under a rest, `(1)`, between the bar line and the bar line; write the count without "
        "parentheses, or move the note"}},
      {"count | 1  2  |\n"
       "G     | 1 10  |\n"
       "D     | 1  10 |\n",
       {"2:11: error: `10` stands under no count, between `1` and `2`; move it under one of them, or write its count"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      5 6    5             |\n"
       "D      |        12 3                 |\n",
       {"2:19: error: `6` stands under no count, between `2` and `3`; move it under one of them, or write its count",
        "3:20: error: `3` stands under no count, between `2` and `3`; move it under one of them, or write its count"}},
      {"count | 1 +2/3 | 1 |\n"
       "G     | 0 5 7  | 1 |\n",
       {"2:13: error: `7` is the second note of one string at `+2/3`; write a count for each note"}},
  });
}

TEST_CASE("one slip is one error: counts out of place, a count left out") {
  check({
      {"count |  1 2 3 | 1 |\n"
       "chord | i7     |   |\n"
       "G     | 0      | 0 |\n"
       "D     |   2 3  |   |\n",
       {"1:10: error: these counts stand 1 column too far to the right; move them 1 column to the left: then `i7` and "
        "`3` stand under one, too"}},
      {"count |1   2   3   | 1 |\n"
       "G     |  0   5     | 0 |\n"
       "D     |          7 |   |\n",
       {"1:8: error: these counts stand 2 columns too far to the left; move them 2 columns to the right: then `0` and "
        "`7` stand under one, too"}},
      {"count | 1     3 | 1 |\n"
       "chord |    V7   |   |\n"
       "G     | 0  5  7 | 0 |\n"
       "D     | 0  5  7 | 0 |\n",
       {"2:12: error: `V7` stands under no count, between `1` and `3`, and so does what stands under it; its first "
        "character decides: move it under one of them, or write its count"}},
  });
}

TEST_CASE("joined runs") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5h7p5  4h5    5/7    7\\5    |\n",
       {"2:11: error: `h7p5` stands under no count, between `1` and `2`; write its count over it: each number of a "
        "joined run needs one, but for a grace note",
        "2:18: error: `h5` stands under no count, between `2` and `3`; write its count over it: each number of a "
        "joined run needs one, but for a grace note",
        "2:25: error: `/7` stands under no count, between `3` and `4`; write its count over it: each number of a "
        "joined run needs one, but for a grace note",
        "2:32: error: `\\5` stands under no count, between `4` and the bar line; write its count over it: each number "
        "of a joined run needs one, but for a grace note"}},
      {"count  | 1      2      3      4      |\n"
       "G      |  5h7h8        5/7           |\n",
       {"2:11: error: `5h7h8` stands under no count, between `1` and `2`; move it under one of them, or write its "
        "count",
        "2:25: error: `/7` stands under no count, between `3` and `4`; write its count over it: each number of a "
        "joined run needs one, but for a grace note"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 2    4/5      3h4p3         |\n",
       {"2:25: error: `h4p3` stands under no count, between `3` and `4`; write its count over it: each number of a "
        "joined run needs one, but for a grace note"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 4>h5                        |\n",
       {"2:12: error: `h5` stands under no count, between `1` and `2`; write its count over it: each number of a "
        "joined run needs one, but for a grace note"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 2   4>h5    xh5 (3)h4       |\n",
       {"2:14: error: `4>` stands under no count, and cannot be a grace note to `h5`; a grace note is a plain fret "
        "joined to a fret; else write its count over it",
        "2:22: error: `x` stands under no count, and cannot be a grace note to `h5`; a grace note is a plain fret "
        "joined to a fret; else write its count over it",
        "2:26: error: `(3)h4` stands under no count, between `3` and `4`; move it under one of them, or write its "
        "count"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 2    7h5    5p5   4/(5)     |\n",
       {"2:16: error: `h` leads up, but the note before on this string is at fret 7; write `p5`",
        "2:23: error: `p` leads down, but the note before on this string is at fret 5; between equal frets leave the "
        "sign out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 2     4x     3=             |\n",
       {"2:16: error: `4` stands under no count, and cannot be a grace note to `x`; a grace note is a plain fret "
        "joined to a fret; else write its count over it",
        "2:23: error: `3` stands under no count, and cannot be a grace note to `=`; a grace note is a plain fret "
        "joined to a fret; else write its count over it"}},
  });
}

TEST_CASE("where a note comes from") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      h5     p7     /5     |\n",
       {"2:17: error: `h` leads up, but the note before on this string is at fret 5; between equal frets leave the "
        "sign out",
        "2:24: error: `p` leads down, but the note before on this string is at fret 5; write `h7`",
        "2:31: error: `/` leads up, but the note before on this string is at fret 7; write `\\5`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      h3     \\7     \\7     |\n",
       {"2:17: error: `h` leads up, but the note before on this string is at fret 5; write `p3`",
        "2:24: error: `\\` leads down, but the note before on this string is at fret 3; write `/7`",
        "2:31: error: `\\` leads down, but the note before on this string is at fret 7; between equal frets leave the "
        "sign out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | h5     5      7             |\n"
       "D      | p5     /5     h7            |\n",
       {"2:10: error: a hammer-on needs a note before it on its string; write the note that it comes from, or leave "
        "the `h` out",
        "3:10: error: a pull-off needs a note before it on its string; write the note that it comes from, or leave the "
        "`p` out",
        "3:17: error: `/` leads up, but the note before on this string is at fret 5; between equal frets leave the "
        "sign out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | h 5    5h     p-     7/     |\n",
       {"2:10: error: `h` stands alone; write it before its number with nothing between: `h7`",
        "2:18: error: `h` stands alone; write it before its number with nothing between: `h7`",
        "2:24: error: `p` stands alone; write it before its number with nothing between: `h7`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | hx     h=     /x     \\=     |\n",
       {"2:10: error: `h` leads to a dead note; `h`, `p`, `/` and `\\` lead to a fret",
        "2:17: error: `h` leads to a note that is held on; `h`, `p`, `/` and `\\` lead to a fret",
        "2:24: error: `/` leads to a dead note; `h`, `p`, `/` and `\\` lead to a fret",
        "2:31: error: `\\` leads to a note that is held on; `h`, `p`, `/` and `\\` lead to a fret"}},
  });
}

TEST_CASE("frets that are not there") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 25     5      57            |\n",
       {"2:10: error: there is no fret 25; the last fret is 24; frets of two notes stand apart",
        "2:24: error: there is no fret 57; the last fret is 24; frets of two notes stand apart"}},
      {"count  | 1      2      3      4      |\n"
       "5      | 5      6      12            |\n",
       {"2:10: error: the short string has no fret 5; its frets are the neck's: 0 for the open string, then 6 and up"},
       {.instrument = "banjo"}},
      {"count  | 1      2      3      4      |\n"
       "1      | 0      23     999999999999  |\n",
       {"2:17: error: there is no fret 23; the last fret is 22; frets of two notes stand apart",
        "2:24: error: there is no fret 999999999999; the last fret is 22; frets of two notes stand apart"},
       {.instrument = "banjo"}},
      {"count  | 1      2      3      4      |\n"
       "G      | <8>    <12>   <1>           |\n",
       {"2:11: error: no natural harmonic lies at fret 8; natural harmonics lie at frets such as 12, 7, 5, 19 and 24",
        "2:25: error: no natural harmonic lies at fret 1; natural harmonics lie at frets such as 12, 7, 5, 19 and 24"}},
  });
}

TEST_CASE("brackets and signs") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | <12    <x>    ()     (5     |\n",
       {"2:10: error: `<` is not closed after its fret; a natural harmonic is a fret in angle brackets: `<12>`",
        "2:17: error: `<` has no fret after it; a natural harmonic is a fret in angle brackets: `<12>`",
        "2:24: error: `(` has no fret after it; a ghost note is a fret in parentheses: `(5)`",
        "2:31: error: `(` is not closed after its fret; a ghost note is a fret in parentheses: `(5)`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | x~     x^1    x/     x>.    |\n",
       {"2:11: error: a dead note has no pitch to shake; write a fret instead of `x`, or leave the sign out",
        "2:18: error: a dead note has no pitch to bend; write a fret instead of `x`, or leave the sign out",
        "2:25: error: a dead note has no pitch to slide; write a fret instead of `x`, or leave the sign out"}},
      {"count  | 1      2      3      4      |\n"
       "G      | ^1     >      ~5     _      |\n",
       {"2:10: error: `^` has no note before it; write it after its fret with nothing between: `5^1`",
        "2:17: error: `>` has no note before it; write it after its fret with nothing between: `5>`",
        "2:24: error: `~` has no note before it; write it after its fret with nothing between: `5~`; a note that is "
        "held on is "
        "`=`",
        "2:31: error: `_` has no note before it; write it after its fret with nothing between: `5_`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5>>    5~~    5//    5^1^1  |\n",
       {"2:12: error: `>` stands twice at one note; write each sign once",
        "2:19: error: `~` stands twice at one note; write each sign once",
        "2:26: error: `/` stands twice at one note; write each sign once",
        "2:34: error: `^` stands twice at one note; write each sign once"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5^     5^0    5^1/0  5^1.5  |\n",
       {"2:11: error: this bend has no amount; write how many whole tones: `^1`, `^1/2`, `^3/2`",
        "2:18: error: `^0` is no amount to bend by; write how many whole tones: `^1`, `^1/2`, `^3/2`",
        "2:25: error: `^1/0` is no amount to bend by; write how many whole tones: `^1`, `^1/2`, `^3/2`",
        "2:32: error: a bend's amount is a fraction, not a decimal; write how many whole tones: `^1`, `^1/2`, `^3/2`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5^12   5^v    5^1/4/ 5^2/7  |\n",
       {"2:11: error: `^12` is no amount to bend by; write how many whole tones: `^1`, `^1/2`, `^3/2`",
        "2:18: error: this bend has no amount; write how many whole tones: `^1`, `^1/2`, `^3/2`",
        "2:24: warning: `5^1/4/` slides off, not to the 5 after it; for a slide to that note write `/5`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5/     7      5\\-   <7>     |\n",
       {"2:10: warning: `5/` slides off, not to the 7 after it; for a slide to that note write `/7`",
        "2:24: warning: `5\\` slides off, not to the 7 after it; for a slide to that note write `\\7`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5/            x             |\n",
       {}},
  });
}

TEST_CASE("what is held on") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | =      5      =      x      |\n"
       "D      | x      =      5      (1)    |\n",
       {"2:10: error: there is no note on this string for `=` to hold on; `=` stands at the count after its note, on "
        "the same string",
        "3:17: error: a dead note cannot be held on; write the fret of the note that sounds on"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      =>     5             |\n",
       {"2:18: error: a note that is held on takes no accent; accents belong to its start"}},
      {"count | 1 | (1) | 1 |\n"
       "G     | 5 |     | = |\n",
       {"2:19: error: there is no note on this string for `=` to hold on; `=` stands at the count after its note, on "
        "the same string"}},
  });
}

TEST_CASE("signs of other tabs, and keys beside the right one") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | O      o      l      I      |\n",
       {"2:10: error: `O` is no sign of a string row; write the figure 0 for an open string, not the letter O",
        "2:17: error: `o` is no sign of a string row; write the figure 0 for an open string, not the letter o",
        "2:24: error: `l` is no sign of a string row; write the figure 1, not the letter l",
        "2:31: error: `I` is no sign of a string row; write the figure 1, not the letter I"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5b7    5s7    7v     X      |\n",
       {"2:11: error: `b` is no sign of a string row; a bend is written `7^1`: up by so many whole tones",
        "2:18: error: `s` is no sign of a string row; a slide is written `5/7` up, `7\\5` down",
        "2:25: error: `v` is no sign of a string row; vibrato is written `~`",
        "2:31: error: `X` is no sign of a string row; a dead note is written `x`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5r     5S7    5H7    5P3    |\n",
       {"2:11: error: `r` is no sign of a string row; a bend and its release are written `7^1v`; a rest is a "
        "count in parentheses, `(2)`",
        "2:18: error: `S` is no sign of a string row; a slide is written `5/7` up, `7\\5` down",
        "2:25: error: `H` is no sign of a string row; a hammer-on is written `h`",
        "2:32: error: `P` is no sign of a string row; a pull-off is written `p`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | [12]   *      &      %      |\n",
       {"2:10: error: `[` is no sign of a string row; a ghost note is written `(5)`, a natural harmonic `<12>`",
        "2:17: error: `*` is no sign of a string row; a natural harmonic is written `<12>`, a struck strum in a `play` "
        "row",
        "2:24: error: `&` is no sign of a string row; counts stand in the count row",
        "2:31: error: `%` is no sign of a string row; a repeated bar is written in the count row"}},
      {"count  | 1      2      3      4      |\n"
       "G      | t5     T      {5}    é      |\n",
       {"2:10: error: `t` is no sign of a string row; the hand is written in a `hand` row: `T` for the thumb, `P` for "
        "a pop; a tapped note is its fret, with a word about it in a `text` row",
        "2:17: error: `T` is no sign of a string row; the hand is written in a `hand` row: `T` for the thumb, `P` for "
        "a pop; a tapped note is its fret, with a word about it in a `text` row",
        "2:24: error: `{` is no sign of a string row; write a fret, `x`, `(5)`, `=` or `<12>`; before it `h`, `p`, `/` "
        "or `\\`; after it `>`, `.`, `_`, `~`, `^1/2`, `/` or `\\`",
        "2:31: error: `é` is no sign of a string row; write a fret, `x`, `(5)`, `=` or `<12>`; before it `h`, `p`, `/` "
        "or `\\`; after it `>`, `.`, `_`, `~`, `^1/2`, `/` or `\\`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5–––   —5     5      5      |\n",
       {"2:11: error: `–` is no filler; write plain dashes, `-`, or spaces; `fretsheaf tidy` puts them in",
        "2:18: error: `5` stands under no count, between `2` and `3`; move it under one of them, or write its count"}},
  });
}
