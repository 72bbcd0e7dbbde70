#include <catch2/catch.hpp>

#include "lesson/grid_support.h"

using namespace fretsheaf::lesson;
using namespace fretsheaf::lesson::grid_test;

TEST_CASE("chords") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "chord  | Am7    Amin7  am     bVIx   |\n",
       {"3:17: error: `Amin7` is no chord; did you mean `Am7`?",
        "3:24: error: `am` is no chord; a chord's letter is a capital: write `Am`",
        "3:31: error: `bVIx` is no chord; did you mean `bVI`?"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "chord  | CM7    Bb-7/D Gsus   H      |\n",
       {"3:10: error: `CM7` is no chord; did you mean `Cmaj7`?",
        "3:17: error: `Bb-7/D` is no chord; did you mean `Bbm7/D`?",
        "3:24: error: `Gsus` is no chord; did you mean `Gsus4`?",
        "3:31: error: `H` is no chord; write a symbol, `Am7` or `Bb/D`, or a Roman numeral, `IV7`"}},
      {"count  | 1         2         3         4         |\n"
       "G      | 5         7         5         7         |\n"
       "chord  | Dmoll7    D-Moll    Cdur7     Ebmineur7 |\n",
       {"3:10: error: `Dmoll7` is no chord; did you mean `Dm7`?",
        "3:20: error: `D-Moll` is no chord; did you mean `Dm`?", "3:30: error: `Cdur7` is no chord; did you mean `C7`?",
        "3:40: error: `Ebmineur7` is no chord; did you mean `Ebm7`?"}},
      {"count  | 1         2         3         4         |\n"
       "G      | 5         7         5         7         |\n"
       "chord  | Cmajeur7  Fminore/C Gmaggiore Amenor6   |\n",
       {"3:10: error: `Cmajeur7` is no chord; did you mean `Cmaj7`?",
        "3:20: error: `Fminore/C` is no chord; did you mean `Fm/C`?",
        "3:30: error: `Gmaggiore` is no chord; did you mean `G`?",
        "3:40: error: `Amenor6` is no chord; did you mean `Am6`?"}},
      {"count  | 1        2        3        4      |\n"
       "G      | 5        7        5        7      |\n"
       "chord  | B♭7      C♯m7♭5   ♭VII     E♭min7 |\n",
       {"3:10: error: `B♭7` is no chord; a flat is written `b`, and a sharp `#`: write `Bb7`",
        "3:19: error: `C♯m7♭5` is no chord; a flat is written `b`, and a sharp `#`: write `C#m7b5`",
        "3:28: error: `♭VII` is no chord; a flat is written `b`, and a sharp `#`: write `bVII`",
        "3:37: error: `E♭min7` is no chord; a flat is written `b`, and a sharp `#`: write `Ebm7`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "chord  | \"Am7\"  Bb/D N.C.     V7/ii  |\n",
       {"3:11: error: a chord stands in quotes; write `Am7` without them",
        "3:22: error: `N.C.` stands under no count, between `2` and `3`; its first character decides: move it under "
        "one of them, or write its count"}},
      {"count | 1 +2/3 |\n"
       "G     | 0      |\n"
       "chord | C  G7  |\n",
       {}},
      {"count | 1  |\n"
       "G     | 0  |\n"
       "chord | C  |\n"
       "chord | G7 |\n",
       {"4:9: error: `G7` is the second chord at one count; write a count for each chord"}},
      {"count | 1 +2/3 |\n"
       "G     | 0      |\n"
       "chord |   F G7 |\n",
       {"3:13: error: `G7` is the second chord at `+2/3`; quote words that belong together, or write a count for "
        "each"}},
  });
}

TEST_CASE("texts, lyrics and sections") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "text   | \"a b\"  hear the   d         |\n",
       {"3:22: error: `the` stands under no count, between `2` and `3`; its first character decides: move it, or quote "
        "words that belong together",
        "3:28: error: `d` stands under no count, between `3` and `4`; its first character decides: move it, or quote "
        "words that belong together"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "lyric  | sing-  ing -  -la   _       |\n",
       {"3:25: error: `la` stands under no count, between `3` and `4`; its first character decides: move it under one "
        "of them, or write its count",
        "3:30: error: `_` is no syllable; lines under held notes are drawn by themselves"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "lyric  | -      ing -- la--  \"o la\"- |\n",
       {"3:10: error: this hyphen has no syllable before it; write `-` after a syllable whose word goes on",
        "3:30: error: `\"o la\"` stands under no count, between `3` and `4`; its first character decides: move it "
        "under one of them, or write its count"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "section | A B    \"My part\"            |\n",
       {"3:13: error: `B` stands under no count, between `1` and `2`; its first character decides: move it, or quote "
        "words that belong together"}},
  });
}

TEST_CASE("endings") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "ending | 1.     2.                   |\n",
       {"3:17: error: an ending begins at a bar line; write it under the bar's first count"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "ending | 2.                          |\n",
       {"3:10: error: ending `2.` is out of order; the first is `1.`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "ending | 1                           |\n",
       {"3:10: error: `1` is no ending; write `1.`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "ending | first                       |\n",
       {"3:10: error: `first` is no ending; write `1.` or `2.`"}},
      {"count | 1 :| 1 | 1 |\n"
       "ending| 1. |3. |   |\n"
       "G     | 5  | 5 | 5 |\n",
       {"2:13: error: `3.` stands under no count, between the bar line and `1`; its first character decides: move it "
        "under one of them, or write its count"}},
      {"count | 1 :| 1  | 1 |\n"
       "ending| 1. | 3. |   |\n"
       "G     | 5  | 5  | 5 |\n",
       {"2:14: error: ending `3.` is out of order; after `1.` comes `2.`"}},
      {"count | 1  | 1  | 1 |\n"
       "ending| 1. |    | 2.|\n"
       "G     | 5  | 5  | 5 |\n",
       {"2:9: warning: no repeat leads back from ending `1.` to play `2.`; write `:|` where it ends"}},
      {"count | 1  | 1 :| 1 |\n"
       "ending| 1. |    | 2.|\n"
       "G     | 5  | 5  | 5 |\n",
       {}},
      {"count | 1  | 1        | 1 |\n"
       "ending| 1. |          | 2.|\n"
       "road  |    | \"D.C.\"   |   |\n"
       "G     | 5  | 5        | 5 |\n",
       {}},
      {"count | 1 :| 1  | 1 |\n"
       "ending| 1. | 2. |   |\n"
       "ending|    | 2. |   |\n"
       "G     | 5  | 5  | 5 |\n",
       {"3:14: error: ending `2.` is out of order; after `2.` comes `3.`"}},
      {"count | 1 :| 1  | 1 |\n"
       "ending| 1. | 2. |   |\n"
       "ending| 1. |    |   |\n"
       "G     | 5  | 5  | 5 |\n",
       {"3:9: error: `1.` is the second ending of this bar; write one ending a bar"}},
  });
}

TEST_CASE("endings of the largest number there is are out of order, which is said once") {
  check({
      {"count | 1           :| 1          :|\n"
       "ending| 2147483647.  | 2147483647. |\n"
       "G     | 5            | 5           |\n",
       {"2:9: error: ending `2147483647.` is out of order; the first is `1.`"}},

  });
}

TEST_CASE("a row that stands twice is told once, whatever blanks are at its end") {
  check({
      {"count | 1   2 3 4 |\n"
       "chord | Dm7   G7  |\n"
       "chord | Dm7   G7  |  \n"
       "A     | 5     3   |\n",
       {"3:1: error: the same chord row stands twice in this strip; keep one of them"}},
  });
}

TEST_CASE("ways") {
  check({
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "road   | segno  coda   To Coda       |\n",
       {"3:24: error: `To Coda` stands without quotes; write `\"To Coda\"`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "road   | D.S.   coda   \"To Coda\"     |\n"
       "road   | D.C. al Fine                |\n",
       {"3:10: error: `D.S.` leads nowhere: no `segno` stands before it; write the sign in the road row where the way "
        "leads",
        "3:25: error: `To Coda` leads nowhere: no `coda` stands after it; write the sign in the road row where the way "
        "leads",
        "4:10: error: `D.C. al Fine` stands without quotes; write `\"D.C. al Fine\"`"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "road   | D.C.   dc     \"D.S. al Coda\"|\n",
       {"3:17: error: there is no way called `dc`; did you mean `D.C.`?",
        "3:25: error: `D.S. al Coda` leads nowhere: no `segno` stands before it; write the sign in the road row where "
        "the way leads"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "road   | \"To Coda\"     \"D.C. al Coda\"|\n",
       {"3:11: error: `To Coda` leads nowhere: no `coda` stands after it; write the sign in the road row where the way "
        "leads"}},
      {"count  | 1      2      3      4      |\n"
       "G      | 5      7      5      7      |\n"
       "road   | fin    Fine   4      \"DC\"   |\n",
       {"3:10: error: there is no way called `fin`; did you mean `fine`?",
        "3:17: error: there is no way called `Fine`; did you mean `fine`?",
        "3:24: error: there is no way called `4`; write segno, coda, fine, \"To Coda\", D.C., D.S., \"D.C. al Fine\", "
        "\"D.S. al Coda\" … or 4x",
        "3:32: error: there is no way called `DC`; did you mean `D.C.`?"}},
      {"count | 1  | 1  :|\n"
       "road  | 4x | 0x  |\n"
       "G     | 5  | 5   |\n",
       {"2:9: error: `4x` stands in a bar without a `:|`; it says how often a repeated part is played: write it where "
        "the repeat ends",
        "2:14: error: `0x` is no number of times; a repeated part is played 2 to 99 times: `4x`"}},
      {"count | 1  | 1     :|\n"
       "road  |    | 4x 3x |\n"
       "G     | 5  | 5      |\n",
       {"2:17: error: `3x` is the second number of times here; write one"}},
  });
}
