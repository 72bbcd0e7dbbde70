#include <catch2/catch.hpp>

#include "lesson/reader_support.h"

namespace fretsheaf::lesson::test {
namespace {

// Each is read as it stands, with CRLF, and with CRLF and a byte-order mark: the places are the same.
const Case cases[] = {
    {"nothing at all", "",
     R"~(1:1-1: error: this lesson has no 'instrument'
help: write instrument = "bass" at its top
1:1-1: error: this lesson has no 'key'
help: write key = "D dorian" at its top: a tonic, then its mode
1:1-1: error: this lesson has no 'title'
help: write title = "Low tide vamp" at its top
1:1-1: warning: this lesson has no example
help: write [[example]], and its music under it
)~"},
    {"an empty title",
     R"~(title = "  "
key = "D dorian"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(1:9-13: error: the title is empty
help: write title = "Low tide vamp"
)~"},
    {"an unknown key", lesson_with(R"~(instrumnet = "bass")~"),
     R"~(4:1-11: error: a lesson has no key 'instrumnet'
help: did you mean 'instrument'?
)~"},
    {"an unknown key far from all", lesson_with("zither = 1"),
     R"~(4:1-7: error: a lesson has no key 'zither'
help: its keys are title, subtitle, teacher, series, number, level, key, also-in, meter, feel, swing-ratio, instrument, tuning, frets, capo, staves, labels, bars-per-line, template, paper, language, note-names, link, logo, logo-alt, handed, name-line, copyright, intro, practice, practice-log and example
)~"},
    {"a key in capitals", lesson_with(R"~(Teacher = "x")~"),
     R"~(4:1-8: error: a lesson has no key 'Teacher'
help: did you mean 'teacher'?
)~"},
    {"a key of examples", lesson_with("tempo = 92"),
     R"~(4:1-6: error: a lesson has no key 'tempo'
help: it belongs to an example: write it under an [[example]]
)~"},
    {"a title that is a number",
     R"~(title = 7
key = "D dorian"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(1:9-10: error: 'title' must be a text in quotes, not a whole number
help: write title = "Low tide vamp"
)~"},
    {"a number as text", lesson_with(R"~(number = "7")~"),
     R"~(4:10-13: error: 'number' must be a whole number without quotes, not a text
help: write number = 7
)~"},
    {"a number with a decimal point", lesson_with("number = 7.5"),
     R"~(4:10-13: error: 'number' must be a whole number without quotes, not a number with a decimal point
help: write number = 7
)~"},
    {"a negative number", lesson_with("number = -1"),
     R"~(4:10-12: error: 'number' cannot be -1
help: write a whole number from 0 to 9999
)~"},
    {"a date", lesson_with("series = 2026-01-31"),
     R"~(4:10-20: error: 'series' must be a text in quotes, not a date or a time
help: write series = "Tuesday bass class"
)~"},
    {"two lines", lesson_with(R"~(teacher = """Eelgrass
Strings""")~"),
     R"~(4:22-5:1: error: 'teacher' has more than one line
help: write it on one line
)~"},
    {"one line in three quotes", lesson_with(R"~(teacher = """
Eelgrass Strings
""")~"),
     ""},
    {"no mode",
     R"~(title = "T"
key = "D"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(2:7-10: error: 'D' does not say its mode
help: write "D major" or "D minor"; the modes are major, minor, dorian, phrygian, lydian, mixolydian or locrian
)~"},
    {"no tonic",
     R"~(title = "T"
key = "H minor"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(2:7-16: error: 'H minor' is not a key
help: write a tonic and a mode, as in "D dorian"
)~"},
    {"a key as chords are written", lesson_with("also-in = [\"Em\", \"dorian in F#\", \"G min\", \"A aeolian\"]"),
     R"~(4:12-16: error: 'Em' is not a key
help: write "E minor"
4:18-32: error: 'dorian in F#' is not a key
help: write "F# dorian"
4:37-40: error: 'min' is not a mode
help: write "G minor"
4:46-53: error: 'aeolian' is not a mode
help: write "A minor"
)~"},
    {"accidentals as words and as signs",
     lesson_with("also-in = [\"E flat\", \"B\u266D dorian\", \"f-sharp Dorian\", \"C flat minr\", \"G flat blues\"]"),
     R"~(4:12-20: error: 'E flat' is not a key
help: write "Eb dorian"
4:22-33: error: 'B♭ dorian' is not a key
help: write "Bb dorian"
4:35-51: error: 'f-sharp Dorian' is not a key
help: write "F# dorian"
4:53-66: error: 'C flat minr' is not a key
help: write "Cb minor"
4:71-81: error: 'flat blues' is not a mode
help: the modes are major, minor, dorian, phrygian, lydian, mixolydian or locrian
)~"},
    {"an unknown mode",
     R"~(title = "T"
key = "D dorain"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(2:10-16: error: 'dorain' is not a mode
help: did you mean 'dorian'?
)~"},
    {"a mode far from all",
     R"~(title = "T"
key = "D blues"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(2:10-15: error: 'blues' is not a mode
help: the modes are major, minor, dorian, phrygian, lydian, mixolydian or locrian
)~"},
    {"more than seven sharps",
     R"~(title = "T"
key = "D# major"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(2:7-17: error: 'D# major' would have 9 sharps, and a signature has at most seven
help: write "Eb major", which sounds the same
)~"},
    {"more than seven flats",
     R"~(title = "T"
key = "Db locrian"
instrument = "bass"
[[example]]
blank-bars = 1
)~",
     R"~(2:7-19: error: 'Db locrian' would have 10 flats, and a signature has at most seven
help: write "C# locrian", which sounds the same
)~"},
    {"also-in another mode", lesson_with(R"~(also-in = ["E dorian", "A minor"])~"),
     R"~(4:24-33: error: 'A minor' has another mode than the lesson's D dorian
help: write "A dorian"
)~"},
    {"also-in a key twice", lesson_with(R"~(also-in = ["E dorian", "E"])~"),
     R"~(4:24-27: error: 'E dorian' stands twice in 'also-in'
help: keep one of them
)~"},
    {"also-in the own key", lesson_with(R"~(also-in = ["D dorian"])~"),
     R"~(4:12-22: warning: this is the lesson's own key, which is made in any case
help: take it out
)~"},
    {"also-in too many signs", lesson_with(R"~(also-in = ["A# dorian", "D# dorian"])~"),
     R"~(4:12-23: error: 'A# dorian' would have 8 sharps, and a signature has at most seven
help: write "Bb dorian", which sounds the same
)~"},
    {"also-in all and more", lesson_with(R"~(also-in = ["all", "E dorian"])~"),
     R"~(4:12-29: error: "all" stands for every key and has others beside it
help: write also-in = "all"
)~"},
    {"also-in a text", lesson_with(R"~(also-in = "E dorian")~"),
     R"~(4:11-21: error: 'also-in' must be a list of keys, or "all", not a text
help: write also-in = ["E dorian"]
)~"},
    {"also-in a text of several", lesson_with(R"~(also-in = "E dorian, A dorian")~"),
     R"~(4:11-31: error: 'also-in' must be a list of keys, or "all", not a text
help: write also-in = ["E dorian", "A dorian"]
)~"},
    {"also-in a number", lesson_with("also-in = [1]"),
     R"~(4:12-13: error: every item of 'also-in' must be a text in quotes, not a whole number
help: write also-in = ["E dorian", "A dorian"]
)~"},
    {"no meter", lesson_with(R"~(meter = "4/5")~"),
     R"~(4:9-14: error: '4/5' is not a meter
help: write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64, as in "4/4" or "2+2+3/8"
)~"},
    {"a meter too long", lesson_with(R"~(meter = "65/4")~"),
     R"~(4:9-15: error: '65/4' is not a meter
help: write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64, as in "4/4" or "2+2+3/8"
)~"},
    {"an unknown feel", lesson_with(R"~(feel = "swimg")~"),
     R"~(4:8-15: error: 'feel' cannot be 'swimg'
help: did you mean 'swing'?
)~"},
    {"a feel far from all", lesson_with(R"~(feel = "reggae")~"),
     R"~(4:8-16: error: 'feel' cannot be 'reggae'
help: it can be straight, swing, shuffle or swing-16
)~"},
    {"a swing ratio upside down", lesson_with(R"~(swing-ratio = "1:2")~"),
     R"~(4:15-20: error: '1:2' is not a swing ratio
help: write the long part, a colon and the short part, whole numbers up to 12, as in "2:1" or "3:2"
)~"},
    {"a straight swing ratio", lesson_with(R"~(swing-ratio = "1:1")~"),
     R"~(4:15-20: error: '1:1' is not a swing ratio
help: write the long part, a colon and the short part, whole numbers up to 12, as in "2:1" or "3:2"
)~"},
    {"a swing ratio that is a number", lesson_with("swing-ratio = 2"),
     R"~(4:15-16: error: 'swing-ratio' must be a text in quotes, not a whole number
help: write swing-ratio = "2:1"
)~"},
    {"an unknown instrument",
     R"~(title = "T"
key = "D dorian"
instrument = "mandolina"
[[example]]
blank-bars = 1
)~",
     R"~(3:14-25: error: 'instrument' cannot be 'mandolina'
help: did you mean 'mandolin'?
)~"},
    {"a tuning that is a text", lesson_with(R"~(tuning = "EADG")~"),
     R"~(4:10-16: error: 'tuning' must be a list of pitches, not a text
help: write tuning = ["E1", "A1", "D2", "G2"]
)~"},
    {"a tuning without octaves", lesson_with(R"~(tuning = ["E", "A1", "D2", "G9"])~"),
     R"~(4:11-14: error: 'E' is not a pitch
help: write a note and its octave, as in "E1"; middle C is C4
4:28-32: error: no string is tuned to 'G9'
help: write a pitch from C0 to G6
)~"},
    {"an empty tuning", lesson_with("tuning = []"),
     R"~(4:10-12: error: 'tuning' has 0 strings
help: write from 1 to 12 pitches, the bottom line of the tab first
)~"},
    {"a banjo with four strings",
     R"~(title = "T"
key = "G major"
instrument = "banjo"
tuning = ["D3", "G3", "B3", "D4"]
[[example]]
blank-bars = 1
)~",
     R"~(4:10-34: error: 'tuning' has 4 strings, and the banjo five
help: the first is the short one, as in ["G4", "D3", "G3", "B3", "D4"]
)~"},
    {"frets beyond 36", lesson_with("frets = 37"),
     R"~(4:9-11: error: 'frets' cannot be 37
help: write a whole number from 1 to 36
)~"},
    {"a capo on the last fret", lesson_with(R"~(frets = 12
capo = 12)~"),
     R"~(5:8-10: error: a capo at fret 12 leaves nothing of a neck with 12 frets
help: write a capo from 0 to 11
)~"},
    {"a capo below the nut", lesson_with("capo = -1"),
     R"~(4:8-10: error: 'capo' cannot be -1
help: write a whole number from 0 to 35
)~"},
    {"an unknown staff", lesson_with(R"~(staves = ["slash", "tabs"])~"),
     R"~(4:20-26: error: 'staves' cannot be 'tabs'
help: did you mean 'tab'?
)~"},
    {"a staff twice", lesson_with(R"~(staves = ["tab", "slash", "tab"])~"),
     R"~(4:27-32: error: 'tab' stands twice in 'staves'
help: keep one of them
)~"},
    {"no staves", lesson_with("staves = []"),
     R"~(4:10-12: error: 'staves' is empty
help: name at least one of slash, notes and tab
)~"},
    {"a staff that is a text", lesson_with(R"~(staves = "tab")~"),
     R"~(4:10-15: error: 'staves' must be a list, not a text
help: write staves = ["tab"]
)~"},
    {"labels in one text", lesson_with(R"~(labels = "notes, counts")~"),
     R"~(4:10-25: error: 'labels' must be a list, not a text
help: write labels = ["notes", "counts"]
)~"},
    {"a key in a list", lesson_with("feel = ['swing']"),
     R"~(4:8-17: error: 'feel' must be a text in quotes, not a list
help: write feel = 'swing'
)~"},
    {"frets in quotes", lesson_with(R"~(frets = "21")~"),
     R"~(4:9-13: error: 'frets' must be a whole number without quotes, not a text
help: write frets = 21
)~"},
    {"a label twice", lesson_with(R"~(labels = ["notes", "notes"])~"),
     R"~(4:20-27: error: 'notes' stands twice in 'labels'
help: keep one of them
)~"},
    {"labels of the wrong kinds", lesson_with("labels = [1, true]"),
     R"~(4:11-12: error: every item of 'labels' must be a text in quotes, not a whole number
help: write labels = ["chord-degrees"]
4:14-18: error: every item of 'labels' must be a text in quotes, not true
help: write labels = ["chord-degrees"]
)~"},
    {"bars-per-line as text", lesson_with(R"~(bars-per-line = "four")~"),
     R"~(4:17-23: error: 'bars-per-line' must be a whole number without quotes, or "auto", not a text
help: write bars-per-line = 4
)~"},
    {"bars-per-line 0", lesson_with("bars-per-line = 0"),
     R"~(4:17-18: error: 'bars-per-line' cannot be 0
help: write a whole number from 1 to 64
)~"},
    {"no template", lesson_with(R"~(template = "")~"),
     R"~(4:12-14: error: 'template' names no template
help: write template = "music-stand"
)~"},
    {"an unknown paper", lesson_with(R"~(paper = "A4")~"),
     R"~(4:9-13: error: 'paper' cannot be 'A4'
help: did you mean 'a4'?
)~"},
    {"an unknown language", lesson_with(R"~(language = "english")~"),
     R"~(4:12-21: error: 'language' cannot be 'english'
help: it can be en, de, es, fr, it, nl or pt
)~"},
    {"unknown note names", lesson_with(R"~(note-names = "syllabels")~"),
     R"~(4:14-25: error: 'note-names' cannot be 'syllabels'
help: did you mean 'syllables'?
)~"},
    {"a link without https", lesson_with(R"~(link = "example.org/tide")~"),
     R"~(4:8-26: error: 'example.org/tide' is not a link that can be printed
help: write "https://example.org/tide"
)~"},
    {"a mailbox without mailto", lesson_with(R"~(link = "runa@example.org")~"),
     R"~(4:8-26: error: 'runa@example.org' is not a link that can be printed
help: write "mailto:runa@example.org"
)~"},
    {"a link of another kind", lesson_with(R"~(link = "ftp://example.org/tide")~"),
     R"~(4:8-32: error: 'ftp://example.org/tide' is not a link that can be printed
help: a link begins with https://, http:// or mailto: and has no spaces
)~"},
    {"a link with a space", lesson_with(R"~(link = "https://example.org/low tide")~"),
     R"~(4:8-38: error: 'https://example.org/low tide' is not a link that can be printed
help: a link begins with https://, http:// or mailto: and has no spaces
)~"},
    {"a link too long for a code that can be read",
     lesson_with("link = \"https://example.org/" + std::string(300, 'x') + "\""),
     R"~(4:8-330: error: this link has 320 characters, and its QR code has room for 300
help: write a shorter link that leads there
)~"},
    {"a logo of another kind", lesson_with(R"~(logo = "lantern.gif"
logo-alt = "A lantern")~"),
     R"~(4:8-21: error: 'lantern.gif' is neither a PNG nor an SVG file
help: name a file that ends in .png or .svg
)~"},
    {"a logo outside", lesson_with(R"~(logo = "../lantern.svg"
logo-alt = "A lantern")~"),
     R"~(4:8-24: error: '../lantern.svg' lies outside the folder of these lessons
help: put the logo beside the lesson file and write its name alone
)~"},
    {"a logo from the root", lesson_with(R"~(logo = "/lantern.svg"
logo-alt = "A lantern")~"),
     R"~(4:8-22: error: '/lantern.svg' lies outside the folder of these lessons
help: put the logo beside the lesson file and write its name alone
)~"},
    {"a logo that is missing", lesson_with(R"~(logo = "lantern.svg")~"),
     R"~(4:8-21: error: there is no file 'lantern.svg'
help: it is looked for in the folder of the file that names it
4:8-21: warning: the logo has no 'logo-alt'
help: say in a few words what it shows, for those who cannot see it
)~"},
    {"words for no logo", lesson_with(R"~(logo-alt = "A lantern")~"),
     R"~(4:12-23: error: 'logo-alt' describes a logo, and there is no 'logo'
help: write logo = "lantern.svg", or take 'logo-alt' out
)~"},
    {"an unknown hand", lesson_with(R"~(handed = "leftt")~"),
     R"~(4:10-17: error: 'handed' cannot be 'leftt'
help: did you mean 'left'?
)~"},
    {"a name-line that is a text", lesson_with(R"~(name-line = "true")~"),
     R"~(4:13-19: error: 'name-line' must be true or false, without quotes, not a text
help: write name-line = true
)~"},
    {"practice that is a text", lesson_with(R"~(practice = "Slowly.")~"),
     R"~(4:12-21: error: 'practice' must be a list of texts, not a text
help: write practice = ["Slowly."]
)~"},
    {"a practice log too long", lesson_with("practice-log = 61"),
     R"~(4:16-18: error: 'practice-log' cannot be 61
help: write a whole number from 0 to 60
)~"},
    {"an example in single brackets", base + R"~([example]
blank-bars = 1
)~",
     R"~(4:1-10: error: an example begins with [[example]]
help: write it with two brackets on each side
)~"},
    {"an example that is a value", base + R"~(example = 1
)~",
     R"~(4:11-12: error: 'example' is not a key with a value
help: write [[example]] on a line of its own, and the keys of the example under it
)~"},
    {"examples in the plural", base + R"~([[examples]]
blank-bars = 1
)~",
     R"~(4:3-11: error: a lesson has no key 'examples'
help: did you mean 'example'?
)~"},
    {"many things at once",
     R"~(titel = "T"
key = "D"
instrument = "bas"
feel = 1
paper = "a5"
[[example]]
tempo = 10
)~",
     R"~(1:1-6: error: a lesson has no key 'titel'
help: did you mean 'title'?
2:7-10: error: 'D' does not say its mode
help: write "D major" or "D minor"; the modes are major, minor, dorian, phrygian, lydian, mixolydian or locrian
3:14-19: error: 'instrument' cannot be 'bas'
help: did you mean 'bass'?
4:8-9: error: 'feel' must be a text in quotes, not a whole number
help: write feel = "swing"
5:9-13: error: 'paper' cannot be 'a5'
help: did you mean 'a4'?
6:1-12: error: this example has no 'tab'
help: write its music after tab = between ''' and ''', or blank-bars = 4 for empty staves
7:9-11: error: 'tempo' cannot be 10
help: write a whole number from 20 to 400
)~"},
};

}  // namespace

TEST_CASE("Keys of a lesson that are wrong") {
  const Case& one = GENERATE(from_range(std::begin(cases), std::end(cases)));
  check(one);
}

}  // namespace fretsheaf::lesson::test
