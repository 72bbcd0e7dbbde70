#pragma once

#include <string>

// Small lessons, a line of music each, whose whole display list and whose picture are kept: what no rule in numbers
// says, and what should not change unseen.
namespace fretsheaf::test {

// Beams, accidentals, a chord with a second, a tuplet, a tie and articulations, on all three staves.
inline const std::string notes_sample =
    "title = \"Low tide\"\nkey = \"A major\"\ninstrument = \"guitar\"\n"
    "staves = [\"slash\", \"notes\", \"tab\"]\nlabels = [\"notes\", \"counts\"]\n[[example]]\ntab = '''\n"
    "count | 1  e & 2  &  3 la li 4 | 1   & 2 &  (3) 4  |\n"
    "chord | A      D7              | Bm7               |\n"
    "mark  | mf                     | <---------------  |\n"
    "e     |        2  3            |       0           |\n"
    "B     | 2  3 5    1> 3 2  0    |       3           |\n"
    "G     |                      4 | 4   =   2.     2_ |\n"
    "'''\n";

// What is drawn on the tab and over it.
inline const std::string techniques_sample =
    "title = \"Low tide\"\nkey = \"E minor\"\ninstrument = \"guitar\"\n"
    "[[example]]\ntab = '''\n"
    "count  | 1   &   2  &    3  &    4   | 1  &      2   &   3 & 4 |\n"
    "stroke |                             |           d             |\n"
    "hand   |                             | p  a                    |\n"
    "mark   | PM-------                   |               let------ |\n"
    "e      |                             |   <12>  7p5             |\n"
    "B      | 5  h7  p5              (5)  | x                 5 = = |\n"
    "G      |            7^1v 5 /9~       |               4       5 |\n"
    "D      |                             |                   2 =   |\n"
    "'''\n";

// Repeats, endings, road signs, boxes, a grouped meter.
inline const std::string structure_sample =
    "title = \"Low tide\"\nkey = \"D mixolydian\"\ninstrument = \"bass\"\n"
    "labels = [\"chord-degrees\"]\n[[example]]\ntab = '''\n"
    "count   | 4 |: 1     2 3 4 | %    :| 1      & 2 3         4 || 1       3 5 |\n"
    "section |   |  A           |      |                         |  Coda        |\n"
    "ending  |   |              | 1.   |  2.                     |              |\n"
    "road    |   |  segno       |      |             fine        |  coda        |\n"
    "meter   |   |              |      |                         |  2+2+3/8     |\n"
    "chord   |   |  D7          | G7/B |  Am7                    |  D           |\n"
    "D       | 0 |  0           |      |                         |  5       4   |\n"
    "A       |   |        5 3 5 |      |  0      0 3             |            5 |\n"
    "E       |   |              |      |             5         3 |              |\n"
    "text    |   |              |      |  louder                 |              |\n"
    "'''\n";

// A rhythm without a tab, with words.
inline const std::string strum_sample =
    "title = \"Low tide\"\nkey = \"G major\"\ninstrument = \"ukulele\"\n"
    "labels = [\"counts\"]\n[[example]]\ntab = '''\n"
    "count  | 1   2   & (3) &     4  &     | 1      la li 2       (4) |\n"
    "chord  | G             Cadd9          | D7sus4                   |\n"
    "stroke | d   d   u     u     d  u     | d      u  d  d           |\n"
    "mark   | mp            <---------     | f            fermata     |\n"
    "lyric  | Row row             a- shore |                          |\n"
    "'''\n";

}  // namespace fretsheaf::test
