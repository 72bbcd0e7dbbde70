#include <catch2/catch.hpp>

#include "lesson/reader_support.h"

namespace fretsheaf::lesson::test {
namespace {

// Four examples: one with a held note, a chord, a dead note and a rest; one whose frets are hidden; a rhythm; blank
// bars. The texts stand in the lesson's practice notes, in the first one's text row and in the last one's practice
// notes.
std::string music_with(const std::string& practice, const std::string& row = "words",
                       const std::string& last = "words") {
  const std::string quoted = '"' + row + '"';
  return std::string(base) + "practice = [\"" + practice +
         "\"]\n\n[[example]]\nhide = [\"rhythm\"]\ntab = '''\ntext  | " + quoted +
         std::string(quoted.size() < 41 ? 41 - quoted.size() : 0, ' ') + R"~( |
count | 1   2   3   (4)                           |
G     | 2   =   x                                 |
D     | 0                                         |
'''

[[example]]
hide = ["frets"]
tab = '''
count | 1   2   3   4   |
G     | 2   2   2   2   |
'''

[[example]]
tab = '''
count | 1   2   3   4   |
'''

[[example]]
blank-bars = 2
practice = [")~" +
         last + "\"]\n";
}

// Each is read as it stands, with CRLF, and with CRLF and a byte-order mark: the places are the same.
const Case cases[] = {
    {"all is well",
     music_with("{ a brace } {{key}} {{degree b3}} {{chord V7/ii}} {{ note  1:1.1 }} {{place 1:1.1}} {{{key}}} }}"),
     ""},
    {"an unclosed placeholder", music_with("The {{key is closed"),
     R"~(4:18-20: error: '{{' is not closed on its line
help: write '}}' after it; where braces are meant as such, only one of them
)~"},
    {"one closed by a single brace", music_with("The {{key} and {{key}}"),
     R"~(4:18-20: error: '{{' is not closed on its line
help: write '}}' after it; where braces are meant as such, only one of them
)~"},
    {"an unknown word", music_with("Land on {{degre b3}}."),
     R"~(4:22-34: error: '{{degre b3}}' is not known
help: did you mean 'degree'?
)~"},
    {"a word far from all", music_with("Land on {{lantern}}."),
     R"~(4:22-33: error: '{{lantern}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
)~"},
    {"nothing", music_with("Land on {{}}."),
     R"~(4:22-26: error: '{{}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
)~"},
    {"a key with more", music_with("{{key D}}"),
     R"~(4:14-23: error: '{{key D}}' has something after 'key'
help: write {{key}}
)~"},
    {"no degree", music_with("{{degree}} {{degree 8}}"),
     R"~(4:14-24: error: '{{degree}}' does not name a degree
help: write one as in {{degree b3}}, from 1 to 7
4:25-37: error: '{{degree 8}}' does not name a degree
help: write one as in {{degree b3}}, from 1 to 7
)~"},
    {"no chord", music_with("{{chord}} {{chord Q7}}"),
     R"~(4:14-23: error: '{{chord}}' does not name a chord
help: write a numeral or a symbol, as in {{chord V7}} or {{chord Am7}}
4:24-36: error: '{{chord Q7}}' does not name a chord
help: write a numeral or a symbol, as in {{chord V7}} or {{chord Am7}}
)~"},
    {"no note", music_with("{{note}} {{place 3}} {{place x:1.1}}"),
     R"~(4:14-22: error: '{{note}}' does not say which note
help: write the bar, a dot and the note's number: {{note 3.2}} is the 2nd note of bar 3, {{note 2:3.2}} that of example 2
4:23-34: error: '{{place 3}}' does not say which note
help: write the bar, a dot and the note's number: {{place 3.2}} is the 2nd note of bar 3, {{place 2:3.2}} that of example 2
4:35-50: error: '{{place x:1.1}}' does not say which note
help: write the bar, a dot and the note's number: {{place 3.2}} is the 2nd note of bar 3, {{place 2:3.2}} that of example 2
)~"},
    {"note 0 and example 0", music_with("{{note 1:1.0}} {{note 0:1.1}}"),
     R"~(4:14-28: error: '{{note 1:1.0}}' asks for note 0
help: notes are counted from 1 in every bar
4:29-43: error: '{{note 0:1.1}}' asks for example 0
help: examples are counted from 1
)~"},
    {"no tempo word", music_with("{{tempo}} {{tempo middle}}"),
     R"~(4:14-23: error: '{{tempo}}' does not say which tempo
help: write {{tempo first}} or {{tempo last}}
4:24-40: error: '{{tempo middle}}' does not say which tempo
help: write {{tempo first}} or {{tempo last}}
)~"},
    {"no example", music_with("{{place 9:1.1}}"),
     R"~(4:14-29: error: there is no example 9
help: this lesson has 4 examples
)~"},
    {"of which example", music_with("{{place 1.2}} {{tempo first}}"),
     R"~(4:14-27: error: this text belongs to no example, and the lesson has 4
help: write its number too: {{place 1:1.2}}
4:28-43: error: this text belongs to no example, and the lesson has 4
help: put it into a text of the example whose tempo you mean
)~"},
    {"no bar", music_with("{{place 1:7.1}}"),
     R"~(4:14-29: error: there is no bar 7 in this example
help: it has bar 1 alone
)~"},
    {"no such note", music_with("{{place 1:1.3}}"),
     R"~(4:14-29: error: bar 1 has 2 struck notes, and this asks for the 3rd
help: held notes, rests and grace notes are not counted, and a chord is one
)~"},
    {"a dead note", music_with("{{place 1:1.2}} {{note 1:1.2}}"),
     R"~(4:30-44: error: this is a dead note, which has no name
help: {{place …}} says where it is played
)~"},
    {"a hidden note", music_with("{{place 2:1.2}} {{note 2:1.2}}"),
     R"~(4:14-29: error: this would give away what 'hide' hides
help: take it out, or "frets" out of 'hide'
4:30-44: error: this would give away what 'hide' hides
help: take it out, or "frets" out of 'hide'
)~"},
    {"a rhythm", music_with("{{place 3:1.2}}"),
     R"~(4:14-29: error: this example is a rhythm, which has no notes on strings
help: name an example that has notes, as in {{place 1:3.2}}
)~"},
    {"blank bars", music_with("{{note 4:1.1}}"),
     R"~(4:14-28: error: this example has blank bars and no notes
help: name an example that has notes, as in {{place 1:3.2}}
)~"},
    {"in a text row", music_with("words", "{{note 1.4}} {{kay}} {{note 1.1}}"),
     R"~(9:10-22: error: bar 1 has 2 struck notes, and this asks for the 4th
help: held notes, rests and grace notes are not counted, and a chord is one
9:23-30: error: '{{kay}}' is not known
help: did you mean 'key'?
)~"},
    {"in an example", music_with("words", "words", "{{note 1.1}} {{place 1:1.1}} {{tempo last}}"),
     R"~(29:14-26: error: this example has blank bars and no notes
help: name an example that has notes, as in {{place 1:3.2}}
29:43-57: error: this example has no 'tempo'
help: write tempo = 92 in it
)~"},
    {"after escapes and wide letters", base + R"~(practice = ["a", "\"\u266D\" {{kay}}"]
subtitle = '♭ {{kay}}'
intro = """
One {{
key}} \
   two {{kay}}"""
[[example]]
blank-bars = 1
)~",
     R"~(4:30-37: error: '{{kay}}' is not known
help: did you mean 'key'?
5:15-22: error: '{{kay}}' is not known
help: did you mean 'key'?
7:5-7: error: '{{' is not closed on its line
help: write '}}' after it; where braces are meant as such, only one of them
9:8-15: error: '{{kay}}' is not known
help: did you mean 'key'?
)~"},
    {"in every printed text",
     R"~(title = "{{a}}"
subtitle = "{{b}}"
teacher = "{{c}}"
series = "{{d}}"
level = "{{f}}"
copyright = "{{g}}"
intro = "{{h}}"
key = "D dorian"
instrument = "bass"
[[example]]
blank-bars = 1
title = "{{i}}"
intro = "{{j}}"
practice = ["{{k}}"]
)~",
     R"~(1:10-15: error: '{{a}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
2:13-18: error: '{{b}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
3:12-17: error: '{{c}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
4:11-16: error: '{{d}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
5:10-15: error: '{{f}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
6:14-19: error: '{{g}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
7:10-15: error: '{{h}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
12:10-15: error: '{{i}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
13:10-15: error: '{{j}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
14:14-19: error: '{{k}}' is not known
help: known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} and {{tempo last}}
)~"},
};

}  // namespace

TEST_CASE("What is wrong with a {{…}}") {
  const Case& one = GENERATE(from_range(std::begin(cases), std::end(cases)));
  check(one);
}

}  // namespace fretsheaf::lesson::test
