#pragma once

#include <string>

namespace fretsheaf::benchmarks {

// A lesson with one example: a walking line that climbs and falls through the strings, with chords, hammer-ons and
// slides; `bars` in fours. `keys` are further lines of the lesson's head.
inline std::string walking_line(int bars, const std::string& keys = "") {
  std::string text = "title = \"Long walk\"\nkey = \"A dorian\"\ninstrument = \"bass\"\n" + keys;
  text += "[[example]]\ntempo = 120\ntab = '''\n";
  for (int strip = 0; strip < bars / 4; ++strip) {
    text +=
        "count | 1   2   3   4   | 1   2   &   3   4   | 1   2   3   &   4   | 1   2   3   4   |\n"
        "chord | Am7             | D7                  | Am7                 | E7              |\n"
        "G     |                 |             5   h7  | 7   5               |                 |\n"
        "D     |         5   7   | 4   5   7           |         7   /9  5   |             6   |\n"
        "A     | 5   7           |                     |                     | 7   5   4       |\n"
        "E     |                 |                     |                     |                 |\n\n";
  }
  return text + "'''\n";
}

}  // namespace fretsheaf::benchmarks
