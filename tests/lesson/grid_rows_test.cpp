#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("a strip's rows: each has a label that is known, and stands once") {
  check({
      {"count | 1 |\n"
       "      | 3 |\n",
       {"2:7: error: this row has no label; write what it is before its first bar line: count, chord, or a string's "
        "letter"}},
      {"count | 1 |\n"
       "G:    | 2 |\n",
       {"2:2: error: a row's label has no colon; write `G` alone; a repeat's end, `:|`, closes the strip before"}},
      {"count | 1 |\n"
       "chrod | A |\n",
       {"2:1: error: there is no row called `chrod`; did you mean `chord`?"}},
      {"cuont | 1 |\n"
       "G     | 3 |\n",
       {"1:1: error: there is no row called `cuont`; did you mean `count`?"}},
      {"Count | 1 |\n"
       "G     | 3 |\n",
       {"1:1: error: there is no row called `Count`; did you mean `count`?"}},
      {"count | 1 |\n"
       "bas   |   |\n",
       {"2:1: error: there is no row called `bas`; the rows are count, chord, mark, text, lyric, section, ending, "
        "meter, road, finger, hand, spell, stroke, play and the strings G, D, A and E"}},
      {"count | 1 |\n"
       "B     | 2 |\n",
       {"2:1: error: `B` is no string of this instrument; its strings are G, D, A and E, the top line first, or 1 to "
        "4"}},
      {"count | 1 |\n"
       "5     | 2 |\n"
       "G     | 3 |\n",
       {"2:1: error: `5` is no string of this instrument; its strings are G, D, A and E, the top line first, or 1 to "
        "4"}},
      {"count | 1 |\n"
       "e     | 0 |\n"
       "B     | 0 |\n"
       "G     | 1 |\n"
       "D     | 2 |\n",
       {"2:1: error: these are the strings of another instrument: this one has G, D, A and E; write instrument = "
        "\"guitar\", or label the rows G, D, A and E"}},
      {"count | 1 |\n"
       "G     | 0 |\n"
       "D     | 0 |\n"
       "A     | 1 |\n",
       {"2:1: error: these are the strings of another instrument: this one has A, E, C and G; write instrument = "
        "\"bass\", or label the rows A, E, C and G"},
       {.instrument = "ukulele"}},
      {"count | 1 |\n"
       "Bb    | 2 |\n"
       "G     | 3 |\n",
       {"2:1: error: `Bb` is no string of this instrument; its strings are G, D, A and E, the top line first, or 1 to "
        "4"}},
      {"count | 1 2 |\n"
       "G     | 0 0 |\n"
       "G     | 5 5 |\n",
       {"3:1: error: the row of the `G` string stands twice in this strip; a blank line begins a new strip"}},
      {"count | 1 2 |\n"
       "G     | 0 0 |\n"
       "count | 1   |\n"
       "G     | 3   |\n"
       "D     | 3   |\n",
       {"3:1: error: the count row stands twice in this strip; a blank line begins a new strip"}},
      {"count | 1 |\n"
       "E     | 3 |\n"
       "A     | 2 |\n",
       {"3:1: error: this string row is out of order; the tab's top line stands first: G, D, A and E"}},
      {"count | 1 |\n"
       "E     | 3 |\n"
       "B     | 2 |\n"
       "E     | 0 |\n",
       {"2:1: error: two rows are labelled `E`; write `e` for the higher one, here"},
       {.instrument = "guitar"}},
      {"count | 1 |\n"
       "E     | 3 |\n"
       "e     | 2 |\n",
       {"3:1: error: this string row is out of order; the tab's top line stands first: e, B, G, D, A and E"},
       {.instrument = "guitar"}},
      {"count | 1 |\n"
       "b     | 3 |\n"
       "a     | 2 |\n",
       {},
       {.instrument = "guitar"}},
      {"G     | 2 |\n"
       "\n"
       "count | 1 |\n"
       "G     | 3 |\n",
       {"1:1: error: this strip has no count row; write a row above it that says when: `count | 1 2 3 4 |`"}},
      {"G     | 2 |\n"
       "chord | C |\n",
       {"1:1: error: this strip has no count row; write a row above it that says when: `count | 1 2 3 4 |`"}},
  });
}

TEST_CASE("a row whose label is missing is said once, and the rows beside it are not blamed") {
  const std::string rest = "G     | 3   3   |\n";
  check({
      {"      | 1   2   |\n" + rest,
       {"1:7: error: this row has no label; write `count` before its first bar line"},
       {.meter = "2/4"}},
      {"chord | C       |\n"
       "      | 1   2   |\n" +
           rest,
       {"2:7: error: this row has no label; write `count` before its first bar line"},
       {.meter = "2/4"}},
      {"      | 3   3   |\n"
       "count | 1   2   |\n" +
           rest,
       {"1:7: error: this row has no label; write `count` before its first bar line"},
       {.meter = "2/4"}},
      {"1   2   |\n" + rest,
       {"1:1: error: this row has no label; write `count |` before it: a row is a label, then its bars"}},
      {"count   1   2   |\n" + rest,
       {"1:1: error: there is no bar line after `count`; a row is a label, then its bars: write `count |` and go on"}},
      {"count | 1   2   |\n"
       "G--3---3---|\n",
       {"2:1: error: there is no bar line after `G`; a row is a label, then its bars: write `G |` and go on"},
       {.meter = "2/4"}},
      {"zehl  | 1   2   |\n" + rest,
       {"1:1: error: there is no row called `zehl`; the rows are count, chord, mark, text, lyric, section, ending, "
        "meter, road, finger, hand, spell, stroke, play and the strings G, D, A and E"}},
      {"1   2\n" + rest,
       {"1:1: error: this line of the grid has no bar line; a row is a label, then its bars: `count | 1 2 3 4 |`"}},
  });
}

TEST_CASE("a blank line inside a strip is one error, however many there are") {
  const std::string parted =
      "a blank line parts these rows from their count row; take the blank line out; or, where a new strip begins here, "
      "write its count row";
  const Setting two{.meter = "2/4"};
  check({
      {"count | 1   2   |\n\nG     | 3   3   |\n", {"3:1: error: " + parted}, two},
      {"count | 1   2   |\nG     | 3       |\n\nD     |     3   |\n", {"4:1: error: " + parted}, two},
      {"chord | C       |\n\ncount | 1   2   |\nG     | 3   3   |\n", {"1:1: error: " + parted}, two},
      {"count | 1   2   |\n\nG     | 3       |\n\nD     |     3   |\n\nA     |         |\n",
       {"3:1: error: " + parted},
       two},
      {"chord | C       |\n\ncount | 1   2   |\n\nG     | 3   3   |\n", {"1:1: error: " + parted}, two},
      {"count | 1   2   |\nG     | 3   3   |\n\nG     | 3   3   |\n",
       {"4:1: error: this strip has no count row; write a row above it that says when: `count | 1 2 3 4 |`"},
       two},
  });
}

TEST_CASE("a strip holds 64 rows") {
  std::string rows;
  for (int i = 0; i < 64; ++i) rows += "chord |   |\n";
  CHECK(read("count | 1 |\n" + rows.substr(0, rows.size() - 12), {.meter = "1/4"}).said.empty());
  const std::vector<std::string> one_more = {
      "65:1: error: this strip has more than 64 rows; a blank line begins a new strip"};
  CHECK(read("count | 1 |\n" + rows, {.meter = "1/4"}).said == one_more);
  CHECK(read("count | 1 |\n" + rows + rows, {.meter = "1/4"}).said == one_more);
}

TEST_CASE("lines that are no rows") {
  check({
      {"count | 1 |\n"
       "just words\n"
       "G     | 3 |\n",
       {"2:1: error: this line of the grid has no bar line; a row is a label, then its bars: `count | 1 2 3 4 |`"}},
      {"count | 1 |\n"
       "# a remark\n"
       "G     | 3 |\n",
       {"2:1: error: this line of the grid has no bar line; a grid has no remarks: put them outside its quotes"}},
      {"count | 1 |\n"
       "G     │ 3 │\n",
       {"2:7: error: `│` is no bar line; write `|`, the upright stroke of the keyboard"}},
      {"count | 1 |\n"
       "G     ｜ 3 ｜\n",
       {"2:7: error: `｜` is no bar line; write `|`, the upright stroke of the keyboard"}},
      {"\n",
       {"1:1: error: this grid has no bars; write a count row, `count | 1 2 3 4 |`, and the string rows under it"}},
      {"   \n"
       "\t\n",
       {"1:1: error: this grid has no bars; write a count row, `count | 1 2 3 4 |`, and the string rows under it"}},
      {"count |\n",
       {"1:7: error: this count row has no bars; write the counts of each bar and a bar line after them: `count | 1 2 "
        "3 4 |`"}},
  });
}

TEST_CASE("a tab character is an error in a row, and blank in a blank line") {
  check({
      {"count\t| 1 2 |\n"
       "G     | 1 1 |\n",
       {"1:6: error: a tab character stands in the grid; use spaces: a tab's width differs from one editor to the "
        "next; `fretsheaf tidy` puts them in where only one width fits"}},
      {"count |\t1 2 |\n"
       "G     |   1 1 |\n",
       {"1:8: error: a tab character stands in the grid; use spaces: a tab's width differs from one editor to the "
        "next; `fretsheaf tidy` puts them in where only one width fits"}},
      {"count | 1 2 |\n"
       "G     | 1 1 |\t\n",
       {"2:14: error: a tab character stands in the grid; use spaces: a tab's width differs from one editor to the "
        "next; `fretsheaf tidy` puts them in where only one width fits"}},
      {"count | 1 2 |\n"
       "G     | 1\t1 |\n"
       "D     | 2   |\n",
       {"2:10: error: a tab character stands in the grid; use spaces: a tab's width differs from one editor to the "
        "next; `fretsheaf tidy` puts them in where only one width fits"}},
      {"count | 1 |\n"
       "G     | 1 |\n"
       "\t\n"
       "count | 1 |\n"
       "G     | 1 |\n",
       {}},
  });
}

TEST_CASE("a grid whose only strip begins a repeat and cannot be read for its tab has no form to be told") {
  check(
      {{"count |: 1\t2 |\n"
        "A     |  5   |\n",
        {"1:11: error: a tab character stands in the grid; use spaces: a tab's width differs from one editor to the "
         "next; `fretsheaf tidy` puts them in where only one width fits"}}});
}
