// Everything that is said about a score that is taken in: each message with its exact words, at the tag that causes it.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "exchange/adopt.h"
#include "exchange/said.h"
#include "exchange/scores.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

std::string told(const std::string& score, bool& lesson) {
  const exchange::Adopted adopted = exchange::adopt("a.musicxml", score, {});
  lesson = adopted.lesson.has_value();
  return said_of(adopted);
}

struct Case {
  std::string inside;  // of measure 1, after its attributes
  std::string tag;     // where it is said
  std::string said;    // after the place
};

std::string words(const std::string& type, const std::string& sound = {}) {
  return "<direction><direction-type>" + type + "</direction-type>" + sound + "</direction>\n";
}

std::string on_note(const std::string& inside) {
  return note("E4", 16, notations(inside));
}

const std::string e4 = note("E4", 16);
const std::string no_sign = "help: a lesson has no sign for it\n";

// All of a measure of two notes on the D string, whose technical signs these are.
std::string two_notes(const std::string& first, const std::string& second, int second_fret = 4) {
  return note("E4", 8, technical("<string>4</string><fret>2</fret>" + first)) +
         note(second_fret == 4 ? "F#4" : "E4", 8,
              technical("<string>4</string><fret>" + std::to_string(second_fret) + "</fret>" + second));
}

const std::vector<Case> losses = {
    // On notes.
    {on_note("<technical><harmonic><artificial/></harmonic></technical>"), "<harmonic",
     "warning: measure 1: an artificial harmonic's sign is left out\n" + no_sign},
    {on_note("<technical><tap/></technical>"), "<tap", "warning: measure 1: `tap` is left out\n" + no_sign},
    {on_note("<technical><pluck>c</pluck></technical>"), "<pluck",
     "warning: measure 1: `pluck` c is left out\n" + no_sign},
    {on_note("<technical><bend><bend-alter>2</bend-alter><pre-bend/></bend></technical>"), "<bend",
     "warning: measure 1: `bend` is left out\n" + no_sign},
    {on_note("<articulations><strong-accent/></articulations>"), "<strong-accent",
     "warning: measure 1: `strong-accent` is taken as an accent\nhelp: a lesson has no stronger sign\n"},
    {on_note("<articulations><staccatissimo/></articulations>"), "<staccatissimo",
     "warning: measure 1: `staccatissimo` is taken as staccato\nhelp: a lesson has no stronger sign\n"},
    {on_note("<articulations><breath-mark/></articulations>"), "<breath-mark",
     "warning: measure 1: `breath-mark` is left out\n" + no_sign},
    {on_note("<ornaments><tremolo type=\"single\">2</tremolo></ornaments>"), "<tremolo",
     "warning: measure 1: a measured tremolo is left out\n" + no_sign},
    {on_note("<ornaments><turn/></ornaments>"), "<turn", "warning: measure 1: `turn` is left out\n" + no_sign},
    {note("E4", 8, notations("<slur type=\"start\"/>")) + note("G4", 8, notations("<slur type=\"stop\"/>")), "<note>#1",
     "warning: measure 1: a slur is left out\n"
     "help: a lesson slurs hammer-ons and pull-offs: write `h` or `p` before the fret\n"},
    {"<note><pitch><step>E</step><alter>0.5</alter><octave>4</octave></pitch><duration>16</duration></note>\n",
     "<pitch",
     "warning: measure 1: a pitch between two frets is taken at the lower one\nhelp: frets have no quarter tones\n"},
    {note("E4", 8) + note("E4", 8, "<tie type=\"stop\"/>"), "<note>#1",
     "warning: measure 1: a tie comes from no note, and is left out\nhelp: the note is struck\n"},
    {note("E4", 16, "<tie type=\"start\"/>"), "<note",
     "warning: measure 1: a tie leads to no note, and is left out\n"
     "help: write `=` where the note is held on\n"},
    {"<note><cue/><pitch><step>E</step><octave>4</octave></pitch><duration>8</duration></note>\n" + note("E4", 8),
     "<note", "warning: measure 1: a cue note is left out\n" + no_sign},
    {on_note("<technical><hammer-on type=\"stop\"/></technical>"), "<note",
     "warning: measure 1: a hammer-on from no note is left out\n" + no_sign},
    {on_note("<slide type=\"start\"/>"), "<note",
     "warning: measure 1: a hammer-on, pull-off or slide to no note is left out\n" + no_sign},
    {two_notes("<hammer-on type=\"start\"/>", "<hammer-on type=\"stop\"/>", 2), "<note>#1",
     "warning: measure 1: a hammer-on, pull-off or slide to the same fret is left out\n" + no_sign},
    {note("E4", 8, technical("<string>4</string><fret>2</fret>")) +
         note("F#4", 8,
              notations("<technical><string>4</string><fret>4</fret></technical><articulations><scoop/>"
                        "</articulations>")),
     "<note>#1", "warning: measure 1: a slide from nowhere after another note on its string is left out\n" + no_sign},
    {note("F#4", 8, technical("<string>4</string><fret>4</fret><pull-off type=\"start\"/>")) +
         note("A3", 8, technical("<string>5</string><fret>0</fret><pull-off type=\"stop\"/>")),
     "<note>#1", "warning: measure 1: a hammer-on, pull-off or slide from another string is left out\n" + no_sign},
    {note("D4", 0, technical("<string>4</string><fret>0</fret>"), "<grace/>") +
         note("E4", 16, technical("<string>4</string><fret>2</fret>")),
     "<note",
     "warning: measure 1: a grace note is joined to its note as a hammer-on or pull-off\n"
     "help: a lesson's grace notes always lead to their note\n"},
    {note("E4", 0, technical("<string>4</string><fret>2</fret>"), "<grace/>") +
         note("E4", 16, technical("<string>4</string><fret>2</fret>")),
     "<note", "warning: measure 1: a grace note that nothing joins to its note is left out\n" + no_sign},
    {note("D4", 0, technical("<string>4</string><fret>0</fret>"), "<grace/>") +
         note("A3", 16, technical("<string>5</string><fret>0</fret>")),
     "<note", "warning: measure 1: a grace note with no note on its string is left out\n" + no_sign},
    {note("E4", 16, technical("<string>4</string><fret>3</fret>")), "<note",
     "warning: measure 1: a pitch is not what its string and fret sound, and these are kept\n"
     "help: look at the tuning, the capo and the octave\n"},
    {note("E4", 16, technical("<string>4</string><fret>2</fret><harmonic><natural/></harmonic>")), "<note",
     "warning: measure 1: a harmonic's sign where no natural harmonic lies is left out\n" + no_sign},
    {note("E4", 16, technical("<string>4</string><fret>2</fret><fingering>1</fingering>")) +
         note("A4", 16, technical("<string>3</string><fret>2</fret>"), "<chord/>"),
     "<measure",
     "warning: measure 1: a finger of one note among several, or of a note held on, is left out\n" + no_sign},
    {note("E4", 16, technical("<string>4</string><fret>2</fret>")) +
         note("F#4", 16, technical("<string>4</string><fret>4</fret>"), "<chord/>"),
     "<note>#1", "warning: measure 1: the second of two notes on one string is left out\n" + no_sign},
    // Directions.
    {words("<dynamics><fp/></dynamics>") + e4, "<fp", "warning: measure 1: the dynamic `fp` is left out\n" + no_sign},
    {words("<pedal type=\"start\"/>") + e4, "<pedal", "warning: measure 1: `pedal` is left out\n" + no_sign},
    {words("<metronome><beat-unit>quarter</beat-unit><per-minute>c. 90</per-minute></metronome>") + e4, "<metronome",
     "warning: measure 1: a metronome mark without one number is left out\n" + no_sign},
    {words("<metronome><beat-unit>quarter</beat-unit><per-minute>90.4</per-minute></metronome>") + e4, "<metronome",
     "warning: measure 1: the tempo is rounded to 90\nhelp: a lesson counts whole beats a minute\n"},
    {words("<metronome><beat-unit>quarter</beat-unit><per-minute>900</per-minute></metronome>") + e4, "<metronome",
     "warning: measure 1: a tempo of 900 is left out\nhelp: tempos lie between 20 and 400\n"},
    {words("<dashes type=\"start\"/>") + e4 + words("<dashes type=\"stop\"/>"), "<dashes",
     "warning: measure 1: a line between notes is left out\n" + no_sign},
    {words("<wedge type=\"crescendo\"/>") + e4, "<wedge",
     "warning: measure 1: a line that never ends is left out\n" + no_sign},
    {e4 + words("<wedge type=\"stop\"/>"), "<wedge",
     "warning: measure 1: a line that nothing begins is left out\n" + no_sign},
    {e4 + words("<words>D.S. al Coda</words>"), "<measure",
     "warning: measure 1: `D.S. al Coda`, which leads nowhere, is left out\n" + no_sign},
    {"<sound><swing><first>1</first><second>2</second></swing></sound>\n" + e4, "<swing",
     "warning: measure 1: a swing whose first part is not the longer one is left out\n" + no_sign},
    // Chords, bar lines, measures.
    {"<harmony><root><root-step>C</root-step></root><kind>Tristan</kind></harmony>\n" + e4, "<harmony",
     "warning: measure 1: a chord symbol (Tristan) is left out\n" + no_sign},
    {"<harmony><root><root-step>C</root-step></root><kind>major</kind></harmony>\n"
     "<harmony><root><root-step>D</root-step></root><kind>major</kind></harmony>\n" +
         e4,
     "<measure", "warning: measure 1: the second of two chords at one count is left out\n" + no_sign},
    {"<figured-bass/>\n" + e4, "<figured-bass", "warning: measure 1: `figured-bass` is left out\n" + no_sign},
    {note("E4", 8) + "<barline location=\"middle\"/>\n" + note("E4", 8), "<barline",
     "warning: measure 1: a bar line inside a measure is left out\n" + no_sign},
    {e4 + "<barline location=\"right\"><fermata/></barline>\n", "<barline",
     "warning: measure 1: a fermata on a bar line is left out\n" + no_sign},
    {e4 + "<barline location=\"right\"><repeat direction=\"forward\"/></barline>\n", "<barline",
     "warning: measure 1: a repeat sign on the wrong side of its measure is left out\n" + no_sign},
    {note("E4", 8) + "<attributes><key><fifths>2</fifths><mode>major</mode></key></attributes>\n" + note("E4", 8),
     "<key>#1", "warning: measure 1: a key that changes inside a measure is left out\n" + no_sign},
    {"<attributes><key><fifths>9</fifths></key></attributes>\n" + e4, "<key>#1",
     "warning: measure 1: a key that is no scale's signature is left out\nhelp: keys have up to seven sharps or "
     "flats\n"},
    {"<attributes><key><fifths>0</fifths></key></attributes>\n" + e4, "<key>#1",
     "warning: measure 1: the key does not say its mode, and is taken as major\n"
     "help: write another mode into the lesson where it is one\n"},
};

const std::vector<Case> errors = {
    {"<note><pitch><step>H</step><octave>4</octave></pitch><duration>16</duration></note>\n", "<pitch",
     "error: measure 1: a pitch is not sound\nhelp: export the score anew\n"},
    {note("E4", 16) + note("G4", 8, "", "<chord/>"), "<note>#1",
     "error: measure 1: the notes of a chord last differently\n"
     "help: a lesson holds one line of music: notes that begin together end together\n"},
    {note("E4", 16, "", "<chord/>"), "<note",
     "error: measure 1: a note of a chord has none before it\n"
     "help: export the score anew from the program that made it\n"},
    {note("E4", 16, technical("<string>9</string><fret>2</fret>")), "<note",
     "error: measure 1: there is no string 9 on this neck of 6\nhelp: choose another instrument with --instrument\n"},
    {note("E4", 8) + "<attributes><time><beats>3</beats><beat-type>4</beat-type></time></attributes>\n" + note("E4", 8),
     "<time>#1",
     "error: measure 1: a meter that changes inside a measure cannot be kept\n"
     "help: a lesson's meters have 1 to 64 counts over 1, 2, 4 … 64, and change at bar lines\n"},
    {note("E4", 8) + note("B4", 8, "<notehead>slash</notehead>"), "<measure",
     "error: measure 1: from here on strums stand among notes\n"
     "help: an example of a lesson has notes, or is a rhythm of strums\n"},
};

void check(const Case& one, bool is_lesson) {
  const std::string score = score_of(measure(1, plain_attributes + one.inside));
  bool lesson = false;
  CHECK(told(score, lesson) == place_of(score, one.tag) + one.said);
  CHECK(lesson == is_lesson);
}

}  // namespace

namespace {

// Whole scores of several measures, and all that is said of them.
struct Whole {
  std::string measures;
  std::string tag;
  std::string said;
};

const std::string forward = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>\n";
const std::string backward = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>\n";
const std::string in_d = "<attributes><key><fifths>2</fifths><mode>major</mode></key></attributes>\n";
const std::string quarter = "<metronome><beat-unit>quarter</beat-unit><per-minute>";

std::string ending(const std::string& number, const std::string& location, const std::string& type,
                   const std::string& repeat = {}) {
  return "<barline location=\"" + location + "\"><ending number=\"" + number + "\" type=\"" + type + "\"/>" + repeat +
         "</barline>\n";
}

const std::vector<Whole> wholes = {
    {measure(1, plain_attributes + forward + e4) + measure(2, in_d + e4 + backward), "<measure#1",
     "warning: measure 2: a key that changes inside a repeat is left out\n" + no_sign},
    {measure(1, plain_attributes + words(quarter + "90</per-minute></metronome>") + e4) +
         measure(2, words(quarter + "60</per-minute></metronome>") + e4),
     "<measure#1", "warning: measure 2: a change of tempo is left out\n" + no_sign},
    {measure(1, plain_attributes + e4) +
         measure(2, "<sound><swing><first>2</first><second>1</second></swing></sound>\n" + e4),
     "<measure#1", "warning: measure 2: a change of feel inside a section is left out\n" + no_sign},
    {measure(17, plain_attributes + e4), "<measure#0",
     "warning: measure 17: from here on bars are numbered anew, from 1\n"
     "help: every example of a lesson counts its own bars\n"},
    {measure(1, plain_attributes + e4 + "<barline location=\"right\"><bar-style>dashed</bar-style></barline>\n") +
         measure(2, e4),
     "<barline",
     "warning: measure 1: its bar line is drawn plain\n"
     "help: a lesson has plain, double, repeat and final bar lines\n"},
    {measure(1, plain_attributes + forward + e4) +
         measure(2, ending("1, 2", "left", "start") + e4 +
                        ending("1, 2", "right", "stop", "<repeat direction=\"backward\"/>")) +
         measure(3, ending("3", "left", "start") + e4 + ending("3", "right", "stop")),
     "<barline#1",
     "warning: measure 2: the ending 1, 2 is written as 1.\n"
     "help: a lesson's endings are for one time each, in order\n" +
         std::string("a.musicxml:18:1: warning: measure 3: the ending 3 is written as 2.\n"
                     "help: a lesson's endings are for one time each, in order\n")},
    {measure(1, plain_attributes + forward + ending("1", "left", "start") + e4 +
                    ending("1", "right", "stop", "<repeat direction=\"backward\"/>")) +
         measure(2, ending("2", "left", "start") + e4 + ending("2", "right", "discontinue")) + measure(3, e4),
     "<barline#4",
     "warning: measure 2: a double bar line ends its ending\nhelp: a lesson's endings last up to a sign\n"},
};

}  // namespace

TEST_CASE("what a lesson cannot keep of several measures is said where it stands") {
  for (const Whole& one : wholes) {
    const std::string score = score_of(one.measures);
    bool lesson = false;
    INFO(score);
    CHECK(told(score, lesson) == place_of(score, one.tag) + one.said);
    CHECK(lesson);
  }
}

TEST_CASE("limits of a lesson hold for scores") {
  bool lesson = false;
  std::string many = measure(1, plain_attributes + e4);
  for (int number = 2; number <= 2001; ++number) many += measure(number, e4);
  CHECK(told(score_of(many), lesson) ==
        "a.musicxml:7:1: error: measure 1: this section has 2001 measures\n"
        "help: an example of a lesson has up to 2000 bars\n");
  std::string crowd;
  for (int i = 0; i < 1001; ++i) crowd += note("E4", 1);
  CHECK(told(score_of(measure(1, plain_attributes + crowd)), lesson) ==
        "a.musicxml:1009:1: error: measure 1: it has more than 1000 notes and rests\nhelp: take the score in parts\n");
  std::string chord = note("E4", 16);
  for (int i = 0; i < 12; ++i) chord += note("E4", 16, "", "<chord/>");
  CHECK(told(score_of(measure(1, plain_attributes + chord)), lesson) ==
        "a.musicxml:21:1: error: measure 1: a chord has more than 12 notes\n"
        "help: export the score anew from the program that made it\n");
  CHECK(told(score_of(measure(1, plain_attributes + note("E4", 16, "<staff>9</staff>"))), lesson) ==
        "a.musicxml:9:1: error: measure 1: there is no staff 9\n"
        "help: export the score anew from the program that made it\n");
}

TEST_CASE("what a lesson cannot keep of a score is said where it stands") {
  for (const Case& one : losses) check(one, true);
}

TEST_CASE("what makes a score no lesson is said where it stands") {
  for (const Case& one : errors) check(one, false);
}
