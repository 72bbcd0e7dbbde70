#pragma once

namespace fretsheaf::exchange::test {

// A lesson with something of everything that a document can get wrong: a pickup, ties, a tuplet, joined notes, a bend,
// a harmonic, spans, syllables, repeats, endings, ways, a bar repeat, a rhythm, another meter.
inline constexpr const char* sound_lesson = R"(title = "Rope and tackle"
teacher = "Eelgrass Strings"
copyright = "Eelgrass Strings"
key = "D major"
instrument = "bass"
feel = "swing"

[[example]]
title = "Haul"
tempo = 92
tab = '''
count  | 4  | 1    2  &   3       la   li   4    | 1     2  3     & 4 & | 1   (2) 3 e &  a 4 ||  1     2     3 :|
section| A  |                                    |                      |                    |                 |
chord  |    | D           A7b9/C#                | N.C.     Bm7         | G                  |   Em7b5         |
mark   |    | mf                                 | <---     f           | PM-                |   let-          |
G      |    |                                    |          7   7h9 7   |                    |  <12>           |
D      |    |             5       7   p5    =    | 7~       7           | 5           4 /5 0 |         7^1v    |
A      | 5  | 5>      5                          |      (5)             |         3 x        |              /7 |
E      |    |      3                             |                      |                    |                 |
lyric  | Oh | haul a- way         the  bow- line |                      |                    |                 |
'''

[[example]]
title = "Coil"
tempo = { from = 60, to = 60, beat = "dotted quarter" }
meter = "6/8"
tab = '''
count  |: 1 2 3     4 5 6 | 1  2 3 4 5 6 :| 1  2 3 4 5         6 | %              || 1    2 3 4 5 6 |
ending |                  | 1.           |  2.                   |                |                 |
road   |      segno       |              |           "To Coda"   | "D.S. al Coda" |  coda           |
G      |                  |              |  5                    |                |  7              |
D      |  7 5 7           | 4    5 7     |     5 4               |                |                 |
A      |            5 7   |              |         5 3         2 |                |                 |
E      |                  |              |                       |                |                 |
'''

[[example]]
title = "Stow"
tab = '''
count  | 1 2 & (3) & 4 | 1   2 & 3 4 |
chord  | D             | A           |
mark   | p             | TP-         |
'''
)";

}  // namespace fretsheaf::exchange::test
