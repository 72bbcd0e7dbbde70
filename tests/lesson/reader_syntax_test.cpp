#include <catch2/catch.hpp>

#include "lesson/reader_support.h"

namespace fretsheaf::lesson::test {
namespace {

// Each is read as it stands, with CRLF, and with CRLF and a byte-order mark: the places are the same.
const Case cases[] = {
    {"an unclosed text",
     R"~(title = "Low tide
key = "D dorian"
)~",
     R"~(1:9-18: error: this text is not closed on its line
help: write " at its end; a text of several lines stands between """ and """
)~"},
    {"an unclosed text in single quotes",
     R"~(title = 'Low tide
)~",
     R"~(1:9-18: error: this text is not closed on its line
help: write ' at its end; a text of several lines stands between """ and """
)~"},
    {"a grid without quotes",
     R"~(tab =
count | 1 2 3 4 |
)~",
     R"~(1:6-6: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"a grid in backquotes",
     R"~(tab = ```
count | 1 2 3 4 |
```
)~",
     R"~(1:7-8: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"a colon in a table",
     R"~(tempo = { from: 60, to = 92 }
)~",
     R"~(1:15-16: error: ':' stands where '=' belongs
help: write from = …
)~"},
    {"a remark without its sign",
     R"~(feel = "swing" // easy
)~",
     R"~(1:16-23: error: there is more on this line than belongs there
help: a remark begins with #
)~"},
    {"a numeral for a number",
     R"~(capo = II
)~",
     R"~(1:8-10: error: 'capo' is a number
help: write it in figures, as in capo = 2
)~"},
    {"a grid in a single quote",
     R"~(title = "Low tide"
[[example]]
tab = '
count | 1 2 3 4 |
A     | 5   7   |
'
)~",
     R"~(3:7-8: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"a grid in a double quote",
     R"~(tab = "
count | 1 2 3 4 |
"
)~",
     R"~(1:7-8: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"one bracket for two, before an example",
     R"~(title = "Low tide"
[example]
blank-bars = 2
[[example]]
blank-bars = 2
)~",
     R"~(2:1-10: error: an example begins with [[example]]
help: write it with two brackets on each side
)~"},
    {"one bracket for two, after an example",
     R"~([[example]]
blank-bars = 2
[example]
blank-bars = 3
)~",
     R"~(3:1-10: error: an example begins with [[example]]
help: write it with two brackets on each side
)~"},
    {"one bracket for two, twice, with a slip",
     R"~([exmaple]
blank-bars = 2
[exmaple]
blank-bars = 3
)~",
     R"~(1:1-10: error: an example begins with [[example]]
help: write it with two brackets on each side
)~"},
    {"a text without quotes",
     R"~(title = Low tide  # a comment
)~",
     R"~(1:9-17: error: a text needs quotes around it
help: write title = "Low tide"
)~"},
    {"a text without quotes that has quotes",
     R"~(title = Low "slack" tide
)~",
     R"~(1:9-25: error: a text needs quotes around it
help: write title = 'Low "slack" tide'
)~"},
    {"a text without quotes in a list",
     R"~(labels = [notes, "counts"]
)~",
     R"~(1:11-16: error: a text needs quotes around it
help: write "notes"
)~"},
    {"a ratio without quotes",
     R"~(swing-ratio = 2:1
)~",
     R"~(1:15-18: error: a text needs quotes around it
help: write swing-ratio = "2:1"
)~"},
    {"a meter without quotes",
     R"~(meter = 4/4
)~",
     R"~(1:9-12: error: a text needs quotes around it
help: write meter = "4/4"
)~"},
    {"typographic quotes",
     R"~(title = “Low tide”
)~",
     R"~(1:9-10: error: “ is not a quote that TOML knows
help: write straight quotes, ", before and after the text; `fretsheaf tidy` puts them in
)~"},
    {"German quotes after a wide letter",
     R"~(# ü𝄞
title = „Ebbe“
)~",
     R"~(2:9-10: error: „ is not a quote that TOML knows
help: write straight quotes, ", before and after the text; `fretsheaf tidy` puts them in
)~"},
    {"a typographic closing quote",
     R"~(title = "Low tide”
)~",
     R"~(1:18-19: error: ” does not close the text
help: write a straight " there
)~"},
    {"a backquote",
     R"~(title = `Low tide`
)~",
     R"~(1:9-10: error: ` is not a quote that TOML knows
help: write straight quotes, ", before and after the text; `fretsheaf tidy` puts them in
)~"},
    {"no equals sign",
     R"~(title "Low tide"
)~",
     R"~(1:1-17: error: this line has no '=' after its key
help: a line is KEY = VALUE; a comment begins with #
)~"},
    {"a colon",
     R"~(title: "Low tide"
)~",
     R"~(1:6-7: error: ':' stands where '=' belongs
help: write title = …
)~"},
    {"a key with a space",
     R"~(practice log = 6
)~",
     R"~(1:1-14: error: a key has no spaces in it
help: write practice-log =
)~"},
    {"a letter that no key has",
     R"~(título = "Marea"
)~",
     R"~(1:2-3: error: 'í' cannot stand in a key
help: keys have the letters a to z, digits, '-' and '_'
)~"},
    {"a line that begins with no key",
     R"~(= 5
)~",
     R"~(1:1-2: error: a key belongs here
help: a line is KEY = VALUE, with a key of the letters a to z, digits, '-' and '_'
)~"},
    {"a grid line outside quotes",
     R"~(G | 0 |
)~",
     R"~(1:1-8: error: this line has no '=' after its key
help: a tab grid stands between ''' and ''', after tab =
)~"},
    {"no value",
     R"~(title =
)~",
     R"~(1:8-8: error: 'title' has no value
help: write it after the '='
)~"},
    {"no value but a comment",
     R"~(title = # later
)~",
     R"~(1:9-10: error: 'title' has no value
help: write it after the '='
)~"},
    {"a key written twice",
     R"~(title = "One"

key = "D dorian"
 title  = "Two"
)~",
     R"~(4:2-7: error: 'title' is written twice
help: it stands in line 1 already: keep one of them; where another example begins here, write [[example]] above its first key
)~"},
    {"a key written twice in an example",
     R"~([[example]]
tempo = 80
[[example]]
tempo = 80
tempo = 90
)~",
     R"~(5:1-6: error: 'tempo' is written twice
help: it stands in line 4 already: keep one of them; where another example begins here, write [[example]] above its first key
)~"},
    {"a heading written twice",
     R"~([a]
[[b]]
[b.c]
[[b]]
[b.c]
[a]
)~",
     R"~(6:1-4: error: '[a]' is written twice
help: it stands in line 1 already: keep one of them
)~"},
    {"a heading that is not closed",
     R"~([[example]
tempo = 80
)~",
     R"~(1:1-11: error: this heading is not closed
help: write [[example]]
)~"},
    {"a heading with something after it",
     R"~([[example]] tempo = 80
)~",
     R"~(1:13-23: error: there is more on this line than belongs there
help: a heading stands on a line of its own
)~"},
    {"two values",
     R"~(title = "Low" "tide"
)~",
     R"~(1:15-21: error: there is more on this line than belongs there
help: the text ends before this; inside a text in " quotes a quote is written \"
)~"},
    {"a quote inside a text",
     R"~(title = "The "slack" tide"
)~",
     R"~(1:15-27: error: there is more on this line than belongs there
help: the text ends before this; inside a text in " quotes a quote is written \"
)~"},
    {"a decimal comma",
     R"~(tempo = 92,5
)~",
     R"~(1:9-13: error: a text needs quotes around it
help: write tempo = "92,5"
)~"},
    {"a number that begins with 0",
     R"~(number = 07
)~",
     R"~(1:10-12: error: a number does not begin with 0
help: write number = 7
)~"},
    {"a number of noughts",
     R"~(number = 00
)~",
     R"~(1:10-12: error: a number does not begin with 0
help: write number = 0
)~"},
    {"True",
     R"~(name-line = True
)~",
     R"~(1:13-17: error: 'True' is not a value
help: write name-line = true
)~"},
    {"yes",
     R"~(name-line = yes
)~",
     R"~(1:13-16: error: 'yes' is not a value
help: write name-line = true
)~"},
    {"Off",
     R"~(name-line = Off
)~",
     R"~(1:13-16: error: 'Off' is not a value
help: write name-line = false
)~"},
    {"an escape that there is not",
     R"~(title = "C:\qay"
)~",
     R"~(1:12-14: error: '\q' has no meaning in a text in " quotes
help: write \\ for a backslash, or put the text between ' and '
)~"},
    {"an escape at the end of a list",
     R"~(practice = ["a", "\%"]
)~",
     R"~(1:19-21: error: '\%' has no meaning in a text in " quotes
help: write \\ for a backslash, or put the text between ' and '
)~"},
    {"an escape of too few digits",
     R"~(title = "\u12"
)~",
     R"~(1:10-12: error: '\u' has no meaning in a text in " quotes
help: write \\ for a backslash, or put the text between ' and '
)~"},
    {"a grid in \"\"\" with a slide",
     R"~([[example]]
tab = """
count | 1 |
G | 5\3 |
"""
)~",
     R"~(2:7-10: error: a tab grid is written between ''' and '''
help: in other quotes a '\' has a meaning of its own: write tab = ''' and close with '''
)~"},
    {"three quotes closed by those of the other kind",
     R"~([[example]]
tab = """
count | 1 |
G | 0 |
'''
)~",
     R"~(5:1-4: error: ''' does not close the text that """ opened
help: write """ here, too, or ''' before it; a tab grid has ''' and '''
)~"},
    {"an unclosed '''",
     R"~([[example]]
tab = '''
count | 1 |
G | 0 |
)~",
     R"~(2:7-10: error: ''' opens a text here that is never closed
help: write ''' on a line of its own after it
)~"},
    {"a ''' that goes on to the next example",
     R"~([[example]]
tab = '''
count | 1 |
G | 0 |

[[example]]
tab = '''
count | 1 |
G | 0 |
'''
)~",
     R"~(2:7-10: error: ''' opens a text here that is not closed before the next one opens
help: write ''' on a line of its own after it
)~"},
    {"an unclosed list",
     R"~(labels = ["notes",
"counts"
)~",
     R"~(1:10-11: error: this '[' is never closed
help: write ']' after the last item
)~"},
    {"an unclosed list before a key",
     R"~(labels = ["notes"
paper = "a4"
)~",
     R"~(1:10-11: error: this '[' is never closed
help: write ']' after the last item
)~"},
    {"a list without commas",
     R"~(labels = ["notes" "counts"]
)~",
     R"~(1:19-20: error: a ',' is missing before this
help: write a ',' between the items of a list
)~"},
    {"a table over two lines",
     R"~(tempo = { from = 60,
to = 80 }
)~",
     R"~(1:9-10: error: this '{' is not closed on its line
help: write all of it, and a '}', on one line
)~"},
    {"a table with a last comma",
     R"~(tempo = { from = 60, }
)~",
     R"~(1:20-21: error: nothing follows this ','
help: take it out: a '{ … }' has none after its last value
)~"},
    {"a table without commas",
     R"~(tempo = { from = 60 to = 80 }
)~",
     R"~(1:21-22: error: a ',' is missing before this
help: write a ',' between the values of 'tempo'
)~"},
    {"a table without an equals sign",
     R"~(tempo = { from 60 }
)~",
     R"~(1:16-17: error: a '=' is missing after 'from'
help: write { KEY = VALUE, KEY = VALUE }
)~"},
    {"a control character", "title = \"a\ab\"\n",
     R"~(1:11-12: error: a control character stands here
help: take it out
)~"},
    {"a control character in a comment", "# a\ab\ntitle = \"x\"\n",
     R"~(1:4-5: error: this cannot be read as TOML
help: a line is KEY = VALUE, [[example]] or, after a #, a comment
)~"},
    {"a value of no kind",
     R"~(number = 1_
)~",
     R"~(1:11-12: error: this cannot be read as TOML
help: a line is KEY = VALUE, [[example]] or, after a #, a comment
)~"},
    {"letters beyond ASCII in a key, and no text at all after it",
     R"~(title = "a"
clé = 1
)~",
     R"~(2:3-4: error: 'é' cannot stand in a key
help: keys have the letters a to z, digits, '-' and '_'
)~"},
    {"a space of another kind before a key", "title = \"a\"\n\u00A0key = \"D dorian\"\n",
     R"~(2:1-2: error: a key belongs here
help: a line is KEY = VALUE, with a key of the letters a to z, digits, '-' and '_'
)~"},
    {"a word beyond ASCII where a value belongs", "title = été\n",
     R"~(1:9-12: error: a text needs quotes around it
help: write title = "été"
)~"},
    {"a key that is a table already",
     R"~(a.b = 1
a = 2
)~",
     R"~(2:5-6: error: this cannot be read as TOML
help: a line is KEY = VALUE, [[example]] or, after a #, a comment
)~"},
};

}  // namespace

TEST_CASE("Where TOML breaks, in our own words") {
  const Case& one = GENERATE(from_range(std::begin(cases), std::end(cases)));
  check(one);
}

}  // namespace fretsheaf::lesson::test
