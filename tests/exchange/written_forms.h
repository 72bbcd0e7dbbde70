#pragma once

#include <string>
#include <vector>

namespace fretsheaf::exchange::test {

// Lessons whose forms are written out around their examples: before, after and on both sides; with repeats of the form
// and of the example, endings, a pickup, another meter, chords of its own, a variation, and beside a rhythm.
inline std::vector<std::string> written_forms() {
  const std::string top = "title = \"Long pier\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
  const auto example = [](const std::string& form, const std::string& rows, const std::string& more = {}) {
    return "[[example]]\ntitle = \"Planks\"\n" + more + "form = { " + form + ", write-out = true }\ntab = '''\n" +
           rows + "'''\n";
  };
  const std::string two =
      "count | 1 2 3 & 4 | 1 2 3 4 |\nD     |           |     5   |\nA     | 5   3 h5  | 3   =   |\n";
  const std::string rhythm = "[[example]]\ntab = '''\ncount | 1 2 & (3) 4 |\nchord | i7          |\n'''\n";
  return {
      top + example("bars = \"i7 IV7 | v7,i7 i7\", here = \"2-3\"", two, "tempo = 92\n"),
      top + example("bars = \"i7 IV7 v7 i7\", here = \"3-4\"", two),
      top + example("bars = \"i7 IV7 v7 i7\", here = \"1-2\"", two) + rhythm,
      top + example("bars = \"i7 IV7\", here = \"1-2\"", two),
      top + example("bars = \"|: i7 % iv7 bVII7 :| i7 iv7 bVI7,V7 N.C.\", here = \"5-6\"", two),
      top + example("bars = \"|: i7 | IV7 v7 :| i7\", here = \"2-3\"",
                    "count  | 1 2 3 4 :| 1 2 3 4 |\nchord  | F       |          |\nmark   | f       |  <------ |\n"
                    "ending | 1.      |  2.      |\nA      | 5       |      3   |\n"),
      top + example("bars = \"i7 IV7 v7 i7\", here = \"2-3\"",
                    "count | 1 2 3 4 :| 1 2 3 4 |\nA     | 5        | 3       |\n"),
      top + example("bars = \"i7 IV7 v7\", here = \"1-2\"",
                    "count | 4 | 1 2 3 4 | 1 2 3 |\nA     | 3 | 5       | 3     |\n"),
      top + example("bars = \"i7 IV7,v7 i7\", here = \"2\"", "count | 1 4 |\nA     | 5 3 |\n", "meter = \"6/8\"\n"),
      top + example("bars = \"i7 IV7 i7\", here = \"2\"", "count | (1) 3 4 |\nA     |     5 x |\n") + rhythm +
          "[[example]]\nvary = 1\nform = { bars = \"i7 v7\", here = \"2\", write-out = true }\ntab = '''\n"
          "count | 1 (2) 3 |\n'''\n",
  };
}

}  // namespace fretsheaf::exchange::test
