// Scores of other programs: what is kept, what is found, what is said to be lost, and what is refused.
#include <catch2/catch.hpp>
#include <string>
#include <utility>
#include <vector>

#include "exchange/adopt.h"
#include "exchange/said.h"
#include "exchange/scores.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

struct Answer {
  std::string lesson;  // empty where it was refused
  std::string said;    // the messages, each on a line with its place, without the source lines
};

Answer adopt(const std::string& score, const exchange::AdoptWish& wish = {}) {
  const exchange::Adopted adopted = exchange::adopt("a.musicxml", score, wish);
  return {adopted.lesson.value_or(""), said_of(adopted)};
}

// The lesson's grid, between its quotes.
std::string grid(const std::string& lesson) {
  const auto begin = lesson.find("'''\n");
  REQUIRE(begin != std::string::npos);
  return lesson.substr(begin + 4, lesson.find("'''", begin + 4) - begin - 4);
}

std::string one_measure(const std::string& notes) {
  return score_of(measure(1, plain_attributes + notes));
}

}  // namespace

TEST_CASE("pitches alone find their strings and frets") {
  const Answer answer = adopt(one_measure(note("E4", 4) + note("G4", 4) + note("C5", 2) + note("D5", 2) + note("", 4)));
  CHECK(answer.said.empty());
  CHECK(answer.lesson ==
        "title      = \"Gull song\"\n"
        "key        = \"C major\"\n"
        "meter      = \"4/4\"\n"
        "instrument = \"guitar\"\n"
        "\n"
        "[[example]]\n"
        "tab = '''\n"
        "count | 1 2 3 & (4) |\n"
        "e     |             |\n"
        "B     |     1 3     |\n"
        "G     |   0         |\n"
        "D     | 2           |\n"
        "A     |             |\n"
        "E     |             |\n"
        "'''\n");
}

TEST_CASE("a tab's strings and frets are kept where they are") {
  const std::string tab =
      "<attributes><divisions>1</divisions><key><fifths>-1</fifths><mode>minor</mode></key>"
      "<time><beats>3</beats><beat-type>4</beat-type></time><clef><sign>TAB</sign><line>5</line></clef>"
      "<staff-details><staff-lines>4</staff-lines>"
      "<staff-tuning line=\"1\"><tuning-step>E</tuning-step><tuning-octave>1</tuning-octave></staff-tuning>"
      "<staff-tuning line=\"2\"><tuning-step>A</tuning-step><tuning-octave>1</tuning-octave></staff-tuning>"
      "<staff-tuning line=\"3\"><tuning-step>D</tuning-step><tuning-octave>2</tuning-octave></staff-tuning>"
      "<staff-tuning line=\"4\"><tuning-step>G</tuning-step><tuning-octave>2</tuning-octave></staff-tuning>"
      "</staff-details></attributes>\n";
  const Answer answer = adopt(score_of(
      measure(1, tab + note("D2", 1, technical("<string>3</string><fret>5</fret><hammer-on type=\"start\"/>")) +
                     note("E2", 1, technical("<string>3</string><fret>7</fret><hammer-on type=\"stop\"/>")) +
                     note("G2", 1, technical("<string>2</string><fret>5</fret>"))),
      "Low part"));
  CHECK(answer.said.empty());
  CHECK(answer.lesson.find("key        = \"D minor\"") != std::string::npos);
  CHECK(answer.lesson.find("instrument = \"bass\"") != std::string::npos);
  CHECK(grid(answer.lesson) ==
        "count | 1  2 3 |\n"
        "G     |        |\n"
        "D     |      5 |\n"
        "A     | 5 h7   |\n"
        "E     |        |\n");
}

TEST_CASE("notes that have a place keep it, and the search finds the others around them") {
  const Answer answer = adopt(one_measure(note("E4", 4, technical("<string>5</string><fret>7</fret>")) + note("F4", 4) +
                                          note("G4", 4) + note("A4", 4)));
  CHECK(answer.said.empty());
  CHECK(grid(answer.lesson) ==
        "count | 1 2 3 4 |\n"
        "e     |         |\n"
        "B     |         |\n"
        "G     |         |\n"
        "D     |     5 7 |\n"
        "A     | 7 8     |\n"
        "E     |         |\n");
}

TEST_CASE("two voices that never sound together are one line, and two that do are an error with its measure") {
  const std::string backup = "<backup><duration>16</duration></backup>\n";
  const Answer one =
      adopt(score_of(measure(1, plain_attributes + note("E4", 8) + note("", 8) + backup +
                                    "<forward><duration>8</duration></forward>\n" + note("G4", 8, "", "", 2))));
  CHECK(one.said.empty());
  CHECK(grid(one.lesson).starts_with("count | 1 2 3 4 |\n"));
  const Answer two = adopt(score_of(
      measure(7, plain_attributes + note("E4", 16) + backup + note("G4", 8, "", "", 2) + note("", 8, "", "", 2))));
  CHECK(two.lesson.empty());
  CHECK(two.said ==
        "a.musicxml:11:1: error: measure 7: two voices sound at once\n"
        "help: a lesson holds one line of music: take out what is not to be in it\n");
}

TEST_CASE("a staff that says something else is an error, one that says the same is not") {
  const std::string two_staves =
      "<attributes><divisions>1</divisions><key><fifths>0</fifths><mode>major</mode></key>"
      "<time><beats>2</beats><beat-type>4</beat-type></time><staves>2</staves>"
      "<clef number=\"1\"><sign>G</sign><line>2</line></clef><clef number=\"2\"><sign>F</sign><line>4</line></clef>"
      "</attributes>\n";
  const std::string back = "<backup><duration>2</duration></backup>\n";
  const auto staff = [](int number) { return "<staff>" + std::to_string(number) + "</staff>"; };
  const Answer different = adopt(
      score_of(measure(1, two_staves + note("E4", 2, staff(1)) + back + note("C3", 2, staff(2), "", 2)), "Guitar"));
  CHECK(different.said ==
        "a.musicxml:11:1: error: measure 1: two staves have different music\n"
        "help: a lesson holds one line of music: take out what is not to be in it\n");
  const Answer same = adopt(
      score_of(measure(1, two_staves + note("E4", 2, staff(1)) + back + note("E3", 2, staff(2), "", 2)), "Guitar"));
  CHECK(same.said.empty());
}

TEST_CASE("several parts are an error that names them, and one can be chosen") {
  std::string score = one_measure(note("E4", 16));
  const std::string list = "</score-part></part-list>";
  score.replace(score.find(list), list.size(),
                "</score-part><score-part id=\"P2\"><part-name>Bass</part-name></score-part></part-list>");
  const std::string part = score.substr(score.find("<part id="), score.find("</part>") + 8 - score.find("<part id="));
  std::string second = part;
  second.replace(second.find("P1"), 2, "P2");
  score.insert(score.find("</score-partwise>"), second);
  CHECK(adopt(score).said ==
        "a.musicxml:3:1: error: this score has 2 parts, and a lesson holds one\n"
        "help: choose one with --part: 1 `Guitar`, 2 `Bass`\n");
  CHECK(adopt(score, {"Drums", "", ""}).said ==
        "a.musicxml:3:1: error: this score has no part `Drums`\n"
        "help: choose one with --part: 1 `Guitar`, 2 `Bass`\n");
  CHECK(adopt(score, {"2", "", ""}).lesson.find("instrument = \"bass\"") != std::string::npos);
  CHECK(adopt(score, {"Guitar", "", ""}).lesson.find("instrument = \"guitar\"") != std::string::npos);
}

TEST_CASE("of many parts the help names the first, and how many more there are") {
  std::string score = one_measure(note("E4", 16));
  const std::string part = score.substr(score.find("<part id="), score.find("</part>") + 8 - score.find("<part id="));
  std::string listed = "</score-part>";
  std::string parts;
  for (int i = 2; i <= 11; ++i) {
    const std::string id = "P" + std::to_string(i);
    listed += "<score-part id=\"" + id + "\"><part-name>Desk " + std::to_string(i) + "</part-name></score-part>";
    std::string other = part;
    parts += other.replace(other.find("P1"), 2, id);
  }
  const std::string list = "</score-part></part-list>";
  score.replace(score.find(list), list.size(), listed + "</part-list>");
  score.insert(score.find("</score-partwise>"), parts);
  CHECK(adopt(score, {"Drums", "", ""}).said ==
        "a.musicxml:3:1: error: this score has no part `Drums`\n"
        "help: choose one with --part: 1 `Guitar`, 2 `Desk 2`, 3 `Desk 3`, 4 `Desk 4`, 5 `Desk 5`, 6 `Desk 6`, "
        "7 `Desk 7`, 8 `Desk 8` and 3 more\n");
  CHECK(adopt(score, {"11", "", ""}).said.find("no part") == std::string::npos);
}

TEST_CASE("percussion has no place on a neck") {
  const std::string hit =
      "<note><unpitched><display-step>B</display-step><display-octave>4</display-octave></unpitched>"
      "<duration>16</duration><voice>1</voice></note>\n";
  CHECK(adopt(one_measure(hit)).said ==
        "a.musicxml:9:1: error: measure 1: a note has no pitch\n"
        "help: a lesson is for strings with frets, and holds no percussion\n");
}

TEST_CASE("a score of slashes is a rhythm") {
  const auto slash = [](int duration, const std::string& head) {
    return note("B4", duration, "<notehead>" + head + "</notehead>");
  };
  const Answer answer =
      adopt(one_measure(slash(4, "slash") + slash(4, "slash") + slash(2, "slash") + slash(6, "slash")));
  CHECK(answer.said.empty());
  CHECK(grid(answer.lesson) == "count | 1 2 3 & |\n");
}

TEST_CASE("a duration before any divisions, and divisions that are none, are errors") {
  CHECK(adopt(score_of(measure(1, note("E4", 4)))).said ==
        "a.musicxml:8:1: error: measure 1: a duration stands before any `divisions` say how long it is\n"
        "help: export the score anew from the program that made it\n");
  CHECK(adopt(score_of(measure(1, "<attributes><divisions>1000000000</divisions></attributes>\n" + note("E4", 4))))
            .said ==
        "a.musicxml:8:13: error: measure 1: there are no 1000000000 divisions\n"
        "help: a quarter note has 1 to 1000000 of them\n"
        "a.musicxml:9:1: error: measure 1: a duration stands before any `divisions` say how long it is\n"
        "help: export the score anew from the program that made it\n");
}

TEST_CASE("what is not said is taken as the trade does, and said to be") {
  const Answer answer =
      adopt(score_of(measure(1, "<attributes><divisions>1</divisions></attributes>\n" + note("E4", 4)), "Melody"));
  CHECK(answer.said ==
        "a.musicxml:1:1: warning: the score names no instrument that lessons know, and is taken as for guitar\n"
        "help: choose another with --instrument\n"
        "a.musicxml:7:1: warning: measure 1: no key is written; it is taken as C major\n"
        "help: write another key into the lesson\n"
        "a.musicxml:7:1: warning: measure 1: no meter is written; it is taken as 4/4\n"
        "help: write another meter into the lesson\n");
  CHECK(!answer.lesson.empty());
}

TEST_CASE("what a lesson has no sign for is left out and named, each kind once with its measures") {
  const std::string trill = notations("<ornaments><trill-mark/></ornaments>");
  const Answer answer = adopt(score_of(measure(1, plain_attributes + note("E4", 16, trill)) +
                                       measure(2, note("G4", 8, trill) + note("G4", 8, notations("<arpeggiate/>"))) +
                                       measure(3, note("E4", 16, trill)) + measure(4, note("E4", 16)) +
                                       measure(5, note("E4", 16, trill))));
  CHECK(answer.said ==
        "a.musicxml:9:115: warning: measures 1 to 3 and 5: `trill-mark` is left out\n"
        "help: a lesson has no sign for it\n"
        "a.musicxml:13:103: warning: measure 2: `arpeggiate` is left out\n"
        "help: a lesson has no sign for it\n");
  CHECK(!answer.lesson.empty());
}

TEST_CASE("what is lost is named at its line, also far down a long file and in a tag of several lines") {
  const std::string lines(70000, '\n');
  const std::string score =
      score_of(lines + measure(1, plain_attributes + note("E4", 16) + "<figured-bass\n  id=\"f\"\n/>\n"));
  CHECK(adopt(score).said == place_of(score, "<figured-bass") +
                                 "warning: measure 1: `figured-bass` is left out\nhelp: a lesson has no sign for it\n");
}

TEST_CASE("meters that a lesson has not are errors") {
  const auto in_meter = [](const std::string& time) {
    return adopt(score_of(measure(1,
                                  "<attributes><divisions>4</divisions><key><fifths>0</fifths><mode>major</mode></key>"
                                  "<time>" +
                                      time + "</time></attributes>\n" + note("E4", 16))))
        .said;
  };
  const std::string help = "help: a lesson's meters have 1 to 64 counts over 1, 2, 4 … 64, and change at bar lines\n";
  const std::string place = "a.musicxml:8:84: error: measure 1: ";
  CHECK(in_meter("<beats>3</beats><beat-type>8</beat-type><beats>2</beats><beat-type>4</beat-type>") ==
        place + "a meter of two meters cannot be kept\n" + help);
  CHECK(in_meter("<senza-misura/>") == place + "music without a meter cannot be kept\n" + help);
  CHECK(in_meter("<beats>4</beats><beat-type>3</beat-type>") == place + "the meter 4/3 cannot be kept\n" + help);
}

TEST_CASE("tuplets that counts cannot say are errors with their measure") {
  // Eight in the time of one 64th are 512ths, shorter than any note that is written.
  std::string eight;
  for (int i = 0; i < 8; ++i) eight += note("E4", 1);
  const std::string attributes =
      "<attributes><divisions>128</divisions><key><fifths>0</fifths><mode>major</mode></key>"
      "<time><beats>4</beats><beat-type>64</beat-type></time></attributes>\n";
  CHECK(adopt(score_of(measure(1, attributes + eight + note("E4", 24)))).said ==
        "a.musicxml:7:1: error: measure 1: a note that lasts 1/512 of a whole note cannot be written\n"
        "help: a lesson's tuplets are equal parts of one, two or four beats, its shortest note a 256th\n");
  std::string many;
  for (int i = 0; i < 67; ++i) many += note("E4", 1);
  const std::string finer =
      "<attributes><divisions>67</divisions><key><fifths>0</fifths><mode>major</mode></key>"
      "<time><beats>1</beats><beat-type>4</beat-type></time></attributes>\n";
  const std::string said = adopt(score_of(measure(1, finer + many))).said;
  CHECK(
      said.starts_with("a.musicxml:10:1: error: measure 1: something begins at 1/268 of the bar, which no count says\n"
                       "help: a lesson counts in parts of a beat up to the 64th\n"));
}

TEST_CASE("what no hand can play on the instrument is an error with its measure") {
  CHECK(adopt(one_measure(note("C2", 16))).said ==
        "a.musicxml:9:1: error: measure 1: C1 lies below the lowest note of the guitar\n"
        "help: choose another instrument with --instrument, or move the music to another octave\n");
  CHECK(adopt(one_measure(note("C2", 16)), {"", "bass-5", ""}).said.empty());
}

TEST_CASE("a measure that is not as long as its meter gets one of its own, and is named") {
  const Answer answer = adopt(score_of(measure(1, plain_attributes + note("E4", 16)) + measure(2, note("G4", 12)) +
                                       measure(3, note("E4", 16))));
  CHECK(answer.said ==
        "a.musicxml:11:1: warning: measure 2: it is not as long as its meter, 4/4, and is written in 3/4\n"
        "help: only a pickup, and a bar that a sign divides, may be shorter\n");
  CHECK(grid(answer.lesson) ==
        "count | 1 2 3 4 | 1   2 3 | 1   2 3 4 |\n"
        "meter |         | 3/4     | 4/4       |\n"
        "e     |         |         |           |\n"
        "B     |         |         |           |\n"
        "G     |         |         |           |\n"
        "D     | 2       | 5       | 2         |\n"
        "A     |         |         |           |\n"
        "E     |         |         |           |\n");
}

TEST_CASE("pickup, repeats, endings, chords, dynamics, tempo, words and syllables are kept") {
  const std::string harmony =
      "<harmony><root><root-step>B</root-step><root-alter>-1</root-alter></root><kind>dominant</kind>"
      "<bass><bass-step>D</bass-step></bass></harmony>\n";
  const std::string directions =
      "<direction><direction-type><dynamics><mf/></dynamics></direction-type></direction>\n"
      "<direction><direction-type><metronome><beat-unit>half</beat-unit><per-minute>60</per-minute></metronome>"
      "</direction-type></direction>\n"
      "<direction><direction-type><words>softly now</words></direction-type></direction>\n";
  const std::string forward = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>\n";
  const auto ending = [](const std::string& number, const char* location, const char* type, const char* repeat) {
    return "<barline location=\"" + std::string(location) + "\"><ending number=\"" + number + "\" type=\"" + type +
           "\"/>" + repeat + "</barline>\n";
  };
  const std::string lyric = "<lyric><syllabic>begin</syllabic><text>sea</text></lyric>";
  const Answer answer = adopt(score_of(
      "<measure number=\"0\" implicit=\"yes\">\n" + plain_attributes + note("E4", 4, lyric) + "</measure>\n" +
      measure(1, forward + harmony + directions + note("G4", 16)) +
      measure(2, ending("1", "left", "start", "") + note("E4", 16) +
                     ending("1", "right", "stop", "<repeat direction=\"backward\"/>")) +
      measure(3, ending("2", "left", "start", "") + note("D4", 16) + ending("2", "right", "discontinue", ""))));
  CHECK(answer.said.empty());
  CHECK(answer.lesson.find("tempo      = { from = 60, to = 60, beat = \"half\" }\n") != std::string::npos);
  CHECK(grid(answer.lesson) ==
        "count  | 4    |: 1            2 3 4 | 1  2 3 4 :| 1  2 3 4 |\n"
        "ending |      |                     | 1.       |  2.       |\n"
        "chord  |      |  Bb7/D              |          |           |\n"
        "mark   |      |  mf                 |          |           |\n"
        "e      |      |                     |          |           |\n"
        "B      |      |                     |          |           |\n"
        "G      |      |                     |          |           |\n"
        "D      | 2    |  5                  | 2        |  0        |\n"
        "A      |      |                     |          |           |\n"
        "E      |      |                     |          |           |\n"
        "lyric  | sea- |                     |          |           |\n"
        "text   |      |  \"softly now\"       |          |           |\n");
}
