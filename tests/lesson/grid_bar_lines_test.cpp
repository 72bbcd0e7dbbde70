#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("bar-line signs") {
  check({
      {"count || 1 || 1 ||\n"
       "G     |- 0 -| 5 |-\n",
       {}},
      {"count | 1 2 :|: 1 |: 1 :|\n"
       "G     | 0   ||  5 || 7  |\n",
       {}},
      {"count | 1 2 :|: 1 |: 1 :|\n"
       "G     | 0   |   5 |  7 ||\n",
       {}},
      {"count | 1 2 :|: 1 |: 1 :|\n"
       "G     | 0   *|* 5 |* 7 *|\n"
       "D     |-0---o|o-5-|o---o|\n",
       {}},
      {"count ||| 1 || 1 |\n"
       "G     ||  0 |  0 |\n",
       {"1:7: error: `|||` is no bar-line sign; write `||`: the signs are `|`, `||`, `|:`, `:|` and `:|:`"}},
      {"count | 1 2 :||: 1 |\n"
       "G     | 0 0 |||| 1 |\n",
       {"1:13: error: `:||:` is no bar-line sign; write `:|:`: the signs are `|`, `||`, `|:`, `:|` and `:|:`"}},
      {"count | 1 2 3 :  | 1 |\n"
       "G     | 0        | 0 |\n",
       {"1:15: error: `:` stands apart from its bar line; join them: `:|` ends a repeat, `|:` begins one"}},
      {"count |: 1 |\n"
       "G     |  0 |\n",
       {"1:9: warning: a repeat begins before this bar and never ends; write `:|` where it ends"}},
      {"count | 1 |:\n"
       "G     | 0 |\n",
       {"1:11: error: a repeat begins at the example's end; write `|`, or `:|` to end a repeat"}},
      {"count | 1 :|:\n"
       "G     | 0 |\n",
       {"1:11: error: a repeat begins at the example's end; write `:|`"}},
      {"count | 1 |: 1 |\n"
       "G     | 0 |  0 |\n",
       {"1:13: warning: a repeat begins before this bar and never ends; write `:|` where it ends"}},
  });
}

TEST_CASE("a row may end far before the count row's first bar line") {
  const std::string far(200, ' ');
  check(
      {{"count | 1 " + far +
            "|\n"
            "G     | 0 |\n",
        {"2:11: error: this bar line stands 200 columns too far to the left; put it under the count row's: columns are "
         "counted from each row's first `|`"}}});
}

TEST_CASE("bar lines of the other rows") {
  check({
      {"count | 1 2  | 1 |\n"
       "G     | 0  | 0 |\n",
       {"2:12: error: this bar line stands 2 columns too far to the left; put it under the count row's: columns are "
        "counted from each row's first `|`"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0     | 0 |\n",
       {"2:15: error: this bar line stands 1 column too far to the right; put it under the count row's: columns are "
        "counted from each row's first `|`"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0  | 0 |\n"
       "D     | 0  | 0 |\n",
       {"1:14: error: this bar line of the count row is out of line with the other rows; put it over theirs: columns "
        "are counted from each row's first `|`"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0  | 0 |\n"
       "D     | 0    | 0 |\n",
       {"2:12: error: this bar line stands 2 columns too far to the left; put it under the count row's: columns are "
        "counted from each row's first `|`"}},
      {"count | 1 2    1 |\n"
       "G     | 0    | 0 |\n"
       "D     | 0    | 0 |\n",
       {"1:14: error: the count row has no bar line here, where the rows under it have one; write `|` here, or take "
        "theirs out"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0      0 |\n",
       {"2:14: error: this row has no bar line here, where the count row has one; write `|` in this column"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0      0 |\n"
       "D     | 2      0 |\n",
       {"1:14: error: none of the rows under this bar line has one here; take it out, or write it in them, too"}},
      {"count | 1 2  | 1 |: 1 :|\n"
       "G     | 0    | 0    0  |\n"
       "text  | slower     2   |\n",
       {"2:18: error: this row has no bar line here, where the count row has one; write `|` in this column",
        "3:14: error: this row has no bar line here, where the count row has one; write `|` in this column"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0 |  | 0 |\n",
       {"2:11: error: there is no bar line here in the count row; take it out, or write it in the count row, too"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0    | 0 | 3 |\n",
       {"2:20: error: this row goes on where the count row has ended; write the counts of these bars, too, or take "
        "them out"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0    | 0\n",
       {"2:16: error: this row's last bar is not closed; end it with a bar line, `|`, under the count row's"}},
      {"count | 1 2  | 1 |\n"
       "G     | 0    |\n"
       "mark  | mf   |\n",
       {}},
      {"count | 1 2  | 1\n"
       "G     | 0    | 0\n",
       {"1:16: error: the last bar of the count row is not closed; end the row with a bar line, `|`"}},
      {"count | 1 2  | 1\n"
       "G     | 0    | 0 |\n",
       {"1:16: error: the last bar of the count row is not closed; end the row with a bar line, `|`"}},
      {"count | 1 2 :| 1 |\n"
       "G     | 0  7 | 5 |\n",
       {"2:12: error: `7` stands under no count, between `2` and the bar line; move it under one of them, or write its "
        "count"}},
      {"count | 1 2 |: 1 |: 1 :|\n"
       "G     | 0   |5 7 |- 0  |\n",
       {"2:14: error: `5` reaches under a bar-line sign of the count row; leave the columns of the sign free"}},
      {"count | 1 2 :| 1 |\n"
       "text  | \"ab | d\" |\n"
       "G     | 0    | 5 |\n",
       {"2:18: error: this bar line stands 4 columns too far to the right; put it under the count row's: columns are "
        "counted from each row's first `|`"}},
      {"count | 1 2 :| 1 |\n"
       "G     | 0    | 5 |\n"
       "chord | Am/C | C |\n",
       {}},
      {"count | 1 2 :| 1 |\n"
       "G     | 0    | 5 |\n"
       "chord | Am/CC| C |\n",
       {"3:9: error: `Am/CC` reaches under a bar-line sign of the count row; leave the columns of the sign free"}},
  });
}

TEST_CASE("quotes") {
  check({
      {"count | 1 2    | 1 |\n"
       "G     | 0      | 0 |\n"
       "text  | \"a|b\"  | \"c |\n",
       {"3:9: error: this quote is never closed; write `\"` after the words, too"}},
      {"count | 1 2    | 1 |\n"
       "G     | 0      | 0 |\n"
       "text  | \"ab    | \"c\"|\n",
       {"3:9: error: this quote is never closed; write `\"` after the words, too"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "text   | \"\"     \"  \"   a\"b\"   \"c\"d   |\n",
       {"3:10: error: there is nothing between these quotes; write words there, or take the quotes out",
        "3:17: error: there is nothing between these quotes; write words there, or take the quotes out",
        "3:25: error: a quote stands inside a word; quote whole words, and leave a space between two of them",
        "3:34: error: a word goes on after its quotes; quote whole words, and leave a space between two of them"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "text   | “ab”   «c d»  “e f   g”     |\n",
       {"3:10: error: `“` is no quote here; write the keyboard's straight quotes, `\"`"}},
  });
}
