#include <catch2/catch.hpp>

#include "lesson/placeholder.h"
#include "lesson/reader_support.h"

// The example of the lesson file's description, whole: every key is read, and means what the description says.
namespace fretsheaf::lesson::test {
namespace {

const std::string whole = R"~(title       = "Low tide vamp"                 # required
subtitle    = "A Dorian groove in four bars"
teacher     = "Eelgrass Strings"             # free text, printed in the footer
series      = "Tuesday bass class"
number      = 7
level       = "early intermediate"
key         = "D dorian"                      # required: tonic, then major|minor|dorian|phrygian|lydian|mixolydian|locrian
also-in     = ["E dorian", "A dorian"]        # further keys that a whole-sheaf run makes, same mode; "all" (or ["all"]) = the 12 with fewest signs, flats at six
meter       = "4/4"                           # default 4/4
feel        = "swing"                         # straight (default) | swing | shuffle (timed as swing, named shuffle) | swing-16
swing-ratio = "2:1"                           # how swing is played; default 2:1 for swing, swing-16 and shuffle
instrument  = "bass"                          # required: bass | bass-5 | bass-6 | guitar | guitar-7 | ukulele | baritone-ukulele | mandolin | banjo | tenor-banjo
tuning      = ["E1", "A1", "D2", "G2"]        # overrides the instrument's; bottom line of the tab first, scientific pitch, sounding
frets       = 24                              # default: bass, guitar 24, banjo 22, mandolin 20, tenor-banjo 19, ukuleles 15
capo        = 0                               # frets are counted from the capo; key, chords and note names are as they sound
staves      = ["slash", "tab"]                # any of slash, notes, tab; drawn in this order, top down; this is the default
labels      = ["chord-degrees"]               # default none; any of notes | chord-degrees | key-degrees | fingers | counts
bars-per-line = 4                             # or "auto" (default)
template    = "music-stand"                        # a name in templates/, or a path beside the lesson file
paper       = "a4"                            # a4 (default) | letter
language    = "en"                            # of the words that the tool adds itself: en (default) | de | es | fr | it | nl | pt
note-names  = "letters"                       # letters (C D E … B) | letters-h (… B H) | syllables (do re mi … si); of what is printed: files are written in letters
link        = "https://example.org/tide"      # printed, clickable, and as a QR code that a phone can read from paper
logo        = "lantern.svg"                   # PNG or SVG beside the lesson file (an SVG without text, script or outside parts)
logo-alt    = "A lantern"                     # its words for those who cannot see it
handed      = "right"                         # right (default) | left: mirrors neck pictures and chord boxes
name-line   = true                            # a line for the student's name and the date (default false)
copyright   = "© 2026 Eelgrass Strings"
intro       = """CommonMark text. Paragraphs, *emphasis*, lists and links."""
practice    = ["Lesson-level practice notes,", "one string each, CommonMark."]
practice-log = 6                              # an empty log of so many rows: date, tempo, clean passes, note

[[example]]
title    = "The pulse"
intro    = "Text between the heading and the music."
tempo    = { from = 60, to = 108, step = 12, passes = 4 }  # or 92, or [80, 100] (two rungs), or { from, to, rungs = 5, spacing = "even" | "ratio" }; and beat = "dotted quarter" in the table where it is not the meter's own
feel     = "straight"                         # key, meter, feel, labels, staves, bars-per-line may be overridden here
practice = ["Land on the {{degree b3}} of {{chord i}}: {{place 2.3}}."]
build-up = "pairs"                            # bars to tick off before the whole: bars (1, 2, 3, all) | pairs (1, 2, 1–2, …) | add-one (1, 1–2, 1–3, …)
form     = { bars = "i7 IV7 i7 v7 | i7 bVII i7 i7", here = "1-4", write-out = false }  # a chord chart showing where this goes
neck     = { of = "notes", labels = "degrees" }            # a picture of the neck
shapes   = ["Am7", "Dm7 x535"]                # chord boxes; frets bottom line of the tab first, worked out where not given
tab = '''
count  | 1   2   3   4   | 1   2   3 & 4   | 1  (2)  3  la li 4 | 1   & 2 (3)    :|
chord  | i7              | IV7             | i7                 | v7              |
mark   | mf              | <----------     | f                  | p               |
G      |                 |                 |                  2 |                 |
D      | 0               |     2   3   4   |         0  3  2    |                 |
A      |     3       2   | 5         x     | 5                  | 0  h2 3>        |
E      |         3       |                 |                    |                 |
'''
)~";

Lesson read_whole() {
  platform::MemorySystem system;
  system.files["lantern.svg"] = "<svg/>";
  const ReadLesson found = read(whole, system);
  CHECK(said(found) == "");
  REQUIRE(found.lesson);
  return *found.lesson;
}

}  // namespace

TEST_CASE("The description's own lesson: the keys above the examples") {
  const Lesson lesson = read_whole();
  CHECK(lesson.title.value == "Low tide vamp");
  CHECK(lesson.subtitle->value == "A Dorian groove in four bars");
  CHECK(lesson.teacher == "Eelgrass Strings");
  CHECK(lesson.series == "Tuesday bass class");
  CHECK(lesson.number == 7);
  CHECK(lesson.level == "early intermediate");
  CHECK(lesson.key.to_string() == "D dorian");
  REQUIRE(lesson.also_in.size() == 2);
  CHECK(lesson.also_in[0].value.to_string() == "E dorian");
  CHECK(lesson.also_in[1].value.to_string() == "A dorian");
  CHECK(lesson.meter.to_string() == "4/4");
  CHECK(lesson.feel == theory::Feel::swing);
  CHECK(lesson.swing_ratio == theory::Rational(2));
  REQUIRE(lesson.instrument != nullptr);
  CHECK(lesson.instrument->name == "bass");
  REQUIRE(lesson.neck.strings() == 4);
  CHECK(lesson.neck.open_pitch(1).to_string() == "G2");
  CHECK(lesson.neck.open_pitch(4).to_string() == "E1");
  CHECK(lesson.neck.frets == 24);
  CHECK(lesson.neck.capo == 0);
  CHECK(lesson.staves == std::vector{Staff::slash, Staff::tab});
  CHECK(lesson.labels == std::vector{Label::chord_degrees});
  CHECK(lesson.template_name.value == "music-stand");
  CHECK(lesson.paper == Paper::a4);
  CHECK(lesson.language == "en");
  CHECK(lesson.note_names == NoteNames::letters);
  CHECK(lesson.link->value == "https://example.org/tide");
  CHECK(lesson.logo->value == "lantern.svg");
  CHECK(lesson.logo_path == "lantern.svg");
  CHECK(lesson.logo_alt == "A lantern");
  CHECK_FALSE(lesson.left_handed);
  CHECK(lesson.name_line);
  CHECK(lesson.copyright == "© 2026 Eelgrass Strings");
  CHECK(lesson.intro->value == "CommonMark text. Paragraphs, *emphasis*, lists and links.");
  REQUIRE(lesson.practice.size() == 2);
  CHECK(lesson.practice[0].value == "Lesson-level practice notes,");
  CHECK(lesson.practice[1].value == "one string each, CommonMark.");
  CHECK(lesson.practice_log == 6);
}

TEST_CASE("The description's own lesson: the keys of its example") {
  const Lesson lesson = read_whole();
  REQUIRE(lesson.examples.size() == 1);
  const Example& example = lesson.examples.front();
  CHECK(example.title->value == "The pulse");
  CHECK(example.intro->value == "Text between the heading and the music.");
  REQUIRE(example.tempo);
  CHECK(theory::ladder_rungs(*example.tempo) == std::vector{60, 72, 84, 96, 108});
  CHECK(example.tempo->passes == 4);
  CHECK_FALSE(example.tempo->beat);
  CHECK(example.feel == theory::Feel::straight);
  // What the example does not say, the lesson does.
  CHECK(example.key.to_string() == "D dorian");
  CHECK(example.meter.to_string() == "4/4");
  CHECK(example.staves == lesson.staves);
  CHECK(example.labels == lesson.labels);
  CHECK(example.bars_per_line == 4);
  REQUIRE(example.practice.size() == 1);
  CHECK(example.practice[0].value == "Land on the {{degree b3}} of {{chord i}}: {{place 2.3}}.");
  CHECK(example.build_up == BuildUp::pairs);
  CHECK_FALSE(example.vary);
  CHECK_FALSE(example.blank_bars);
  CHECK_FALSE(example.hide.frets);
}

TEST_CASE("The description's own lesson: form, neck and shapes") {
  const Lesson lesson = read_whole();
  const Example& example = lesson.examples.at(0);
  REQUIRE(example.form);
  REQUIRE(example.form->chart.size() == 8);
  std::string chart;
  for (const FormBar& bar : example.form->chart) {
    chart += bar.begins_line ? "| " : "";
    for (const auto& chord : bar.chords) chart += theory::to_string(chord) + " ";
  }
  CHECK(chart == "| i7 IV7 i7 v7 | i7 bVII i7 i7 ");
  CHECK(example.form->here_first == 1);
  CHECK(example.form->here_last == 4);
  CHECK_FALSE(example.form->write_out);
  REQUIRE(example.neck);
  CHECK(example.neck->of == NeckPicture::Of::notes);
  CHECK(example.neck->labels == NeckPicture::Labels::degrees);
  CHECK_FALSE(example.neck->frets);
  REQUIRE(example.shapes.size() == 2);
  CHECK(theory::to_string(example.shapes[0].chord) == "Am7");
  CHECK_FALSE(example.shapes[0].frets);
  CHECK(theory::to_string(example.shapes[1].chord) == "Dm7");
  CHECK(example.shapes[1].frets == std::vector<std::optional<int>>{std::nullopt, 5, 3, 5});
}

TEST_CASE("The description's own lesson: the grid is read, and its texts find their notes in it") {
  const Lesson lesson = read_whole();
  const Music& music = lesson.examples.at(0).music;
  CHECK(music.bars.size() == 4);
  CHECK(music.bars.at(3).right == BarSign::repeat_end);
  // {{place 2.3}}: the D string's third fret, F, which is the b3 of D.
  const Event* event = find_struck(music, 2, 3);
  REQUIRE(event != nullptr);
  const Note* note = naming_note(*event, lesson.neck);
  REQUIRE(note != nullptr);
  CHECK(note->place == Place{2, 3});
  CHECK(event->at == theory::Rational(1, 2));
}

TEST_CASE("The description's own lesson says the same with CRLF and a byte-order mark") {
  platform::MemorySystem system;
  system.files["lantern.svg"] = "<svg/>";
  const ReadLesson found = read("\xEF\xBB\xBF" + with_crlf(whole), system);
  CHECK(said(found) == "");
  REQUIRE(found.lesson);
  CHECK(found.lesson->title.value == "Low tide vamp");
  CHECK(found.lesson->examples.at(0).music.bars.size() == 4);
  const source::Range title = found.lesson->title.range;
  CHECK(found.files[0].bytes().substr(title.begin, title.end - title.begin) == "\"Low tide vamp\"");
}

}  // namespace fretsheaf::lesson::test
