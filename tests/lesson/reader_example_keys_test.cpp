#include <catch2/catch.hpp>

#include "lesson/reader_support.h"

namespace fretsheaf::lesson::test {
namespace {

// Each is read as it stands, with CRLF, and with CRLF and a byte-order mark: the places are the same.
const Case cases[] = {
    {"no tab", lesson_with("", "tempo = 92"),
     R"~(6:1-12: error: this example has no 'tab'
help: write its music after tab = between ''' and ''', or blank-bars = 4 for empty staves
)~"},
    {"an unknown key", lesson_with("", R"~(blank-bars = 2
tempoo = 92)~"),
     R"~(8:1-7: error: an example has no key 'tempoo'
help: did you mean 'tempo'?
)~"},
    {"a key of lessons", lesson_with("", R"~(blank-bars = 2
capo = 2)~"),
     R"~(8:1-5: error: an example has no key 'capo'
help: it belongs to the lesson: write it above the first [[example]]
)~"},
    {"a nested example", base + R"~([[example]]
blank-bars = 1
[[example.example]]
blank-bars = 1
)~",
     R"~(6:11-18: error: an example has no key 'example'
help: its keys are title, intro, tempo, key, meter, feel, staves, labels, bars-per-line, practice, build-up, form, neck, shapes, vary, blank-bars, hide and tab
)~"},
    {"a tempo too slow", lesson_with("", R"~(blank-bars = 2
tempo = 19)~"),
     R"~(8:9-11: error: 'tempo' cannot be 19
help: write a whole number from 20 to 400
)~"},
    {"a tempo too fast", lesson_with("", R"~(blank-bars = 2
tempo = 401)~"),
     R"~(8:9-12: error: 'tempo' cannot be 401
help: write a whole number from 20 to 400
)~"},
    {"a tempo with a decimal point", lesson_with("", R"~(blank-bars = 2
tempo = 92.5)~"),
     R"~(8:9-13: error: 'tempo' must be a whole number, two of them in a list, or a table, not a number with a decimal point
help: write tempo = 92
)~"},
    {"a tempo as text", lesson_with("", R"~(blank-bars = 2
tempo = "92")~"),
     R"~(8:9-13: error: 'tempo' must be a whole number, two of them in a list, or a table, not a text
help: write tempo = 92
)~"},
    {"a tempo with its unit", lesson_with("", "blank-bars = 2\ntempo = \"60 bpm\""),
     R"~(8:9-17: error: 'tempo' must be a whole number, two of them in a list, or a table, not a text
help: write tempo = 60
)~"},
    {"two tempos in a text", lesson_with("", "blank-bars = 2\ntempo = \"60-92\""),
     R"~(8:9-16: error: 'tempo' must be a whole number, two of them in a list, or a table, not a text
help: write tempo = [60, 92], or { from = 60, to = 108, step = 12 } for the steps between
)~"},
    {"three tempos", lesson_with("", R"~(blank-bars = 2
tempo = [60, 80, 100])~"),
     R"~(8:9-22: error: a list of tempos has two: a slow one and a fast one
help: write [80, 100], or { from = 60, to = 108, step = 12 } for more
)~"},
    {"a pair downwards", lesson_with("", R"~(blank-bars = 2
tempo = [100, 80])~"),
     R"~(8:9-18: error: the second tempo must be the faster one
help: write [80, 100]
)~"},
    {"a pair of one", lesson_with("", R"~(blank-bars = 2
tempo = [80, 80])~"),
     R"~(8:9-17: error: the second tempo must be the faster one
help: write the tempo alone, without brackets
)~"},
    {"a pair out of range", lesson_with("", R"~(blank-bars = 2
tempo = [10, 500])~"),
     R"~(8:10-12: error: 'tempo' cannot be 10
help: write a whole number from 20 to 400
8:14-17: error: 'tempo' cannot be 500
help: write a whole number from 20 to 400
)~"},
    {"a ladder without from", lesson_with("", R"~(blank-bars = 2
tempo = { to = 80, step = 4 })~"),
     R"~(8:9-30: error: 'tempo' has no 'from'
help: write the tempo to start with, as in { from = 60, to = 108, step = 12 }
)~"},
    {"a ladder without a way", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 80 })~"),
     R"~(8:9-31: error: 'tempo' does not say how it climbs
help: write step = 12 or rungs = 5
)~"},
    {"a ladder downwards", lesson_with("", R"~(blank-bars = 2
tempo = { from = 80, to = 60, step = 4 })~"),
     R"~(8:27-29: error: 'to' is below 'from': a ladder climbs
help: write from = 60, to = 80
)~"},
    {"a step without a goal", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, step = 4 })~"),
     R"~(8:29-30: error: this is for a tempo that climbs, and there is no 'to'
help: write the goal, as in { from = 60, to = 108, step = 12 }
)~"},
    {"step and rungs", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 80, step = 4, rungs = 5 })~"),
     R"~(8:49-50: error: 'step' and 'rungs' exclude each other
help: keep one of them
)~"},
    {"spacing without rungs", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 80, step = 4, spacing = "even" })~"),
     R"~(8:51-57: error: 'spacing' says how 'rungs' are spread, and there is no 'rungs'
help: write rungs = 5, or take 'spacing' out
)~"},
    {"an unknown spacing", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 80, rungs = 4, spacing = "rate" })~"),
     R"~(8:52-58: error: 'spacing' cannot be 'rate'
help: it can be even or ratio
)~"},
    {"an unknown beat", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, beat = "doted quarter" })~"),
     R"~(8:29-44: error: 'beat' cannot be 'doted quarter'
help: did you mean 'dotted quarter'?
)~"},
    {"too many rungs by step", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 400, step = 1 })~"),
     R"~(8:39-40: error: this makes 341 rungs, and there are at most 60
help: write a step of 6 or more
)~"},
    {"too many rungs", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 400, rungs = 61 })~"),
     R"~(8:40-42: error: 'rungs' cannot be 61
help: write a whole number from 2 to 60
)~"},
    {"more rungs than tempos", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 62, rungs = 5 })~"),
     R"~(8:39-40: error: there are only 3 whole tempos from 60 to 62
help: write fewer rungs
)~"},
    {"an unknown key of tempo", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, too = 62, step = 1 })~"),
     R"~(8:22-25: error: 'tempo' has no key 'too'
help: did you mean 'to'?
)~"},
    {"passes", lesson_with("", R"~(blank-bars = 2
tempo = { from = 60, to = 62, step = 1, passes = 21 })~"),
     R"~(8:50-52: error: 'passes' cannot be 21
help: write a whole number from 1 to 20
)~"},
    {"an unknown build-up", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
build-up = "pair")~"),
     R"~(11:12-18: error: 'build-up' cannot be 'pair'
help: did you mean 'pairs'?
)~"},
    {"blank bars with all that they exclude", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
blank-bars = 2
vary = 1
hide = ["frets"]
build-up = "bars"
neck = { of = "notes" })~"),
     R"~(11:14-15: error: blank bars have no music, and there is a 'tab'
help: keep one of them
12:8-9: error: blank bars have no notes to vary
help: keep one of 'vary' and 'blank-bars'
13:8-17: error: blank bars have nothing to hide
help: take 'hide' out
14:12-18: error: blank bars have nothing to build up
help: take 'build-up' out
15:8-24: error: blank bars have no notes for a picture of the neck
help: write of = "key" or of = "chord i7"
)~"},
    {"too many blank bars", lesson_with("", "blank-bars = 201"),
     R"~(7:14-17: error: 'blank-bars' cannot be 201
help: write a whole number from 1 to 200
)~"},
    {"no blank bars", lesson_with("", "blank-bars = 0"),
     R"~(7:14-15: error: 'blank-bars' cannot be 0
help: write a whole number from 1 to 200
)~"},
    {"something unknown hidden", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
hide = ["frets", "rythm"])~"),
     R"~(11:18-25: error: 'hide' cannot be 'rythm'
help: did you mean 'rhythm'?
)~"},
    {"one row of labels hidden", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
hide = ["frets", "degrees"])~"),
     R"~(11:18-27: error: 'hide' cannot be 'degrees'
help: write "labels": all rows under the tab are hidden together
)~"},
    {"labels that have kinds", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
labels = ["degree"])~"),
     R"~(11:11-19: error: 'labels' cannot be 'degree'
help: did you mean 'chord-degrees' or 'key-degrees'?
)~"},
    {"a text hidden", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
hide = "frets")~"),
     R"~(11:8-15: error: 'hide' must be a list, not a text
help: write hide = ["frets"]
)~"},
    {"a grid in \"\"\"", lesson_with("", R"~(tab = """
count | 1 |
""")~"),
     R"~(7:7-10: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"a grid in \"", lesson_with("", R"~(tab = "count | 1 |")~"),
     R"~(7:7-8: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"a grid in '", lesson_with("", "tab = 'count | 1 |'"),
     R"~(7:7-8: error: a tab grid is written between ''' and '''
help: write tab = ''' and close with '''
)~"},
    {"a grid in a list", lesson_with("", R"~(tab = ["count | 1 |"])~"),
     R"~(7:7-22: error: 'tab' must be a grid between ''' and ''', not a list
help: write tab = ''' … '''
)~"},
    {"a form without bars", lesson_with("", R"~(blank-bars = 2
form = { here = "1-2" })~"),
     R"~(8:8-24: error: 'form' has no 'bars'
help: write form = { bars = "i7 IV7 | i7 v7", here = "1-2" }
)~"},
    {"a form with a wrong chord", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 IV7 | iq7,v7" })~"),
     R"~(8:27-30: error: 'iq7' is not a chord
help: write chords as in "Dm7,G7 | i7": a space between bars, a ',' in a bar, a '|' where a line of the chart ends
)~"},
    {"a form with a comma too many", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7, IV7" })~"),
     R"~(8:21-22: error: a chord is missing beside this ','
help: write chords as in "Dm7,G7 | i7": a space between bars, a ',' in a bar, a '|' where a line of the chart ends
)~"},
    {"an empty form", lesson_with("", R"~(blank-bars = 2
form = { bars = " | " })~"),
     R"~(8:17-22: error: the form has no bars
help: write chords with a space between bars, as in "i7 IV7 | i7 v7"
)~"},
    {"here beyond the form", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 IV7", here = "2-3" })~"),
     R"~(8:34-39: error: 'here' goes to bar 3, and the form has 2 bars
help: bars of the form are counted from 1
)~"},
    {"here the wrong way", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 IV7", here = "2-1" })~"),
     R"~(8:34-39: error: '2-1' does not name bars of the form
help: write the first and the last, counted from 1, as in "1-4"
)~"},
    {"written out nowhere", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 IV7", write-out = true })~"),
     R"~(8:8-45: error: 'form' is to be written out and does not say where this example stands in it
help: write here = "1-4" with its bars
)~"},
    {"a form that is a text", lesson_with("", R"~(blank-bars = 2
form = "i7 IV7")~"),
     R"~(8:8-16: error: 'form' must be a table, not a text
help: write form = { bars = "i7 IV7 | i7 v7", here = "1-2" }
)~"},
    {"a form written out of another length", lesson_with("", R"~(tab = '''
count | 1 |
G | 0 |
'''
form = { bars = "i7 IV7", here = "1-2", write-out = true })~"),
     R"~(11:34-39: error: 'here' marks 2 bars of the form, and this example has 1 bar
help: mark as many as the example has, a pickup not counted
)~"},
    {"a form with more bars marked than are blank", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 IV7 i7", here = "1-3" })~"),
     R"~(8:37-42: error: 'here' marks 3 bars of the form, and this example has 2 bars
help: mark as many as the example has, a pickup not counted
)~"},
    {"a form written out before a pickup", lesson_with("", R"~(tab = '''
count | 4 | 1 |
G     | 0 | 0 |
'''
form = { bars = "i7 IV7", here = "2", write-out = true })~"),
     R"~(11:34-37: error: this example begins with a pickup, and in the written-out form bars stand before it
help: write the pickup's bar out, or let the example begin the form
)~"},
    {"a form with a repeat that is not closed", lesson_with("", R"~(blank-bars = 2
form = { bars = "|: i7 IV7" })~"),
     R"~(8:18-20: error: this repeat is not closed
help: write :| after its last bar
)~"},
    {"a form with a repeat in a repeat", lesson_with("", R"~(blank-bars = 2
form = { bars = "|: i7 |: IV7 :|" })~"),
     R"~(8:24-26: error: this repeat begins inside another one
help: write :|: where one ends and the next begins
)~"},
    {"a form with a repeat of nothing", lesson_with("", R"~(blank-bars = 2
form = { bars = ":| i7" })~"),
     R"~(8:18-20: error: there is no bar before this ':|' to repeat
help: write it after the last bar of a repeat
)~"},
    {"a form with a repeat that has no bar", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 |: :| IV7" })~"),
     R"~(8:24-26: error: there is no bar inside the repeat that ends here
help: write its chords before this sign
)~"},
    {"a form with another sign", lesson_with("", R"~(blank-bars = 2
form = { bars = "i7 ||: IV7 :|" })~"),
     R"~(8:21-24: error: '||:' is no sign between the bars of a form
help: write |, or |: and :| around what is repeated
)~"},
    {"a form that begins like the bar before", lesson_with("", R"~(blank-bars = 2
form = { bars = "% i7" })~"),
     R"~(8:18-19: error: there is no bar before this '%' to repeat
help: write the first bar's chord
)~"},
    {"a neck of a rhythm's notes", lesson_with("", R"~(tab = '''
count | 1 |
'''
neck = { of = "notes" })~"),
     R"~(10:8-24: error: a rhythm has no notes for a picture of the neck
help: write of = "key" or of = "chord i7"
)~"},
    {"a neck of nothing", lesson_with("", R"~(blank-bars = 2
neck = { of = "scale" })~"),
     R"~(8:15-22: error: 'of' cannot be 'scale'
help: it can be notes, key or a chord, as in "chord i7"
)~"},
    {"a neck of a wrong chord", lesson_with("", R"~(blank-bars = 2
neck = { of = "chord H7" })~"),
     R"~(8:15-25: error: 'chord H7' does not name a chord
help: write it as in "chord i7" or "chord Am7"
)~"},
    {"a neck of no chord", lesson_with("", R"~(blank-bars = 2
neck = { of = "chord" })~"),
     R"~(8:15-22: error: 'chord' does not name a chord
help: write it as in "chord i7" or "chord Am7"
)~"},
    {"unknown labels of a neck", lesson_with("", R"~(blank-bars = 2
neck = { of = "key", labels = "degree" })~"),
     R"~(8:31-39: error: 'labels' cannot be 'degree'
help: did you mean 'degrees'?
)~"},
    {"frets of a neck", lesson_with("", R"~(blank-bars = 2
neck = { of = "key", frets = "7" })~"),
     R"~(8:30-33: error: '7' does not name frets
help: write the first and the last, as in "0-7"
)~"},
    {"frets beyond the neck", lesson_with("", R"~(blank-bars = 2
neck = { of = "key", frets = "0-25" })~"),
     R"~(8:8-38: error: 'frets' goes to 25, and the last one is 24
help: write frets = "0-24" or fewer
)~"},
    {"a shape that is no chord", lesson_with("", R"~(blank-bars = 2
shapes = ["Am7", "Hm7 x535"])~"),
     R"~(8:19-22: error: 'Hm7' is not a chord
help: write a chord and, if you like, its frets, as in "Dm7 x535"
)~"},
    {"a shape of wrong signs", lesson_with("", R"~(blank-bars = 2
shapes = ["Dm7 x5y5"])~"),
     R"~(8:16-20: error: 'x5y5' does not say the frets of a shape
help: write one sign a string, the tab's bottom line first, x where it is not played: "x535", and with dashes from fret 10 up: "x-10-12-11"
)~"},
    {"a shape of too few strings", lesson_with("", R"~(blank-bars = 2
shapes = ["Dm7 x53"])~"),
     R"~(8:11-20: error: this shape has 3 frets, and there are 4 strings
help: write one sign a string, x where it is not played
)~"},
    {"a shape beyond the neck", lesson_with("", R"~(blank-bars = 2
shapes = ["Dm7 x-25-24-24"])~"),
     R"~(8:11-27: error: fret 25 is beyond the last one, 24
help: frets from 10 up stand between dashes: "x-10-12-11"
)~"},
    {"a shape where a banjo's short string has no fret",
     "title = \"T\"\nkey = \"G major\"\ninstrument = \"banjo\"\n[[example]]\nblank-bars = 2\n"
     "shapes = [\"C 32012\", \"C 02012\", \"C x2012\", \"C 60012\"]",
     R"~(6:11-20: error: the short string has no fret 3
help: its frets are the neck's: write 0 for the open string, or 6 and up
)~"},
    {"a shape of nothing", lesson_with("", R"~(blank-bars = 2
shapes = ["Dm7 xxxx"])~"),
     R"~(8:16-20: error: 'xxxx' does not say the frets of a shape
help: write one sign a string, the tab's bottom line first, x where it is not played: "x535", and with dashes from fret 10 up: "x-10-12-11"
)~"},
    {"shapes that are a text", lesson_with("", R"~(blank-bars = 2
shapes = "Dm7")~"),
     R"~(8:10-15: error: 'shapes' must be a list of chords, not a text
help: write shapes = ["Dm7"]
)~"},
    {"vary what there is not", lesson_with("", R"~(tab = '''
count | 1 |
'''
vary = 3)~"),
     R"~(10:8-9: error: there is no example 3
help: this lesson has 1
)~"},
    {"vary itself", lesson_with("", R"~(tab = '''
count | 1 |
'''
vary = 1)~"),
     R"~(10:8-9: error: an example cannot vary itself
help: name the example that has the notes
)~"},
    {"vary blank bars", base + R"~([[example]]
blank-bars = 1
[[example]]
vary = 1
tab = '''
count | 1 |
'''
)~",
     R"~(7:8-9: error: example 1 has blank bars and no notes
help: name an example that has notes
)~"},
    {"vary a rhythm", base + R"~([[example]]
tab = '''
count | 1 2 3 4 |
'''
[[example]]
vary = 1
tab = '''
count | 1 2 3 4 |
'''
)~",
     R"~(9:8-9: error: example 1 is a rhythm and has no notes
help: name an example that has notes
)~"},
    {"too few notes to vary", base + R"~([[example]]
tab = '''
count | 1 2 |
G     | 0 2 |
D     |   2 |
'''
[[example]]
vary = 1
tab = '''
count | 1 & 2 |
'''
)~",
     R"~(11:8-9: error: example 1 has 2 notes, and this rhythm has places for 3
help: write fewer counts, or a 'play' row with a * where each note falls
)~"},
    {"too many notes to vary", base + R"~([[example]]
tab = '''
count | 1 2 |
G     | 0 2 |
'''
[[example]]
vary = 1
tab = '''
count | 1 |
'''
)~",
     R"~(10:8-9: error: example 1 has 2 notes, and this rhythm has places for 1
help: write more counts, so that every note has its place
)~"},
    {"too many words of the plucking hand for a note that is varied", base + R"~([[example]]
tab = '''
count | 1 2 |
G     | 0 2 |
D     |   2 |
'''
[[example]]
vary = 1
tab = '''
count | 1   2   |
hand  | i,m i,m |
'''
)~",
     R"~(14:9-12: error: 2 words for 1 note, which come from the example that is varied
help: write one a string, top line first, joined by commas: `i,m`
)~"},
    {"vary a varied one", base + R"~([[example]]
tab = '''
count | 1 |
G | 0 |
'''
[[example]]
vary = 1
tab = '''
count | 1 |
'''
[[example]]
vary = 2
tab = '''
count | 1 |
'''
)~",
     R"~(15:8-9: error: example 2 has no notes of its own
help: write vary = 1, where they are
)~"},
};

}  // namespace

TEST_CASE("Keys of an example that are wrong") {
  const Case& one = GENERATE(from_range(std::begin(cases), std::end(cases)));
  check(one);
}

}  // namespace fretsheaf::lesson::test
