// More of what is said about a score that is taken in: the neck and what no hand plays, signs that nothing can carry,
// limits. Each message with its exact words, at the tag that causes it.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "exchange/adopt.h"
#include "exchange/container.h"
#include "exchange/packing.h"
#include "exchange/said.h"
#include "exchange/scores.h"

using namespace fretsheaf;
using namespace fretsheaf::exchange::test;

namespace {

// One message: where, and what is said after the place.
struct Said {
  std::string tag;  // "" for the file's start
  std::string text;
};

struct Case {
  std::string inside;  // of measure 1, after its attributes
  std::vector<Said> said;
};

std::string all_of(const std::vector<Said>& all, const std::string& score) {
  std::string text;
  for (const Said& one : all) text += (one.tag.empty() ? "a.musicxml:1:1: " : place_of(score, one.tag)) + one.text;
  return text;
}

void check_score(const std::string& score, const std::vector<Said>& said, bool is_lesson,
                 const exchange::AdoptWish& wish = {}) {
  INFO(score.substr(0, 2000));
  const exchange::Adopted adopted = exchange::adopt("a.musicxml", score, wish);
  CHECK(said_of(adopted) == all_of(said, score));
  CHECK(adopted.lesson.has_value() == is_lesson);
}

void check(const std::vector<Case>& cases, bool is_lesson) {
  for (const Case& one : cases) check_score(score_of(measure(1, plain_attributes + one.inside)), one.said, is_lesson);
}

std::string repeated(const std::string& text, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

Said left_out(const std::string& tag, const std::string& what, const std::string& measure = "1") {
  return {tag, "warning: measure " + measure + ": " + what + " is left out\nhelp: a lesson has no sign for it\n"};
}

// A note of the tab: its pitch as it is written, a string and a fret.
std::string at(const std::string& pitch, int string, int fret, int duration, const std::string& more = {},
               const std::string& first = {}) {
  return note(pitch, duration,
              notations("<technical><string>" + std::to_string(string) + "</string><fret>" + std::to_string(fret) +
                        "</fret></technical>" + more),
              first);
}

const std::string e4 = note("E4", 16);
const std::string cross = "<notehead>x</notehead>";
const std::string slash_attributes =
    "<attributes><measure-style><slash type=\"start\"/></measure-style></attributes>\n";

std::string strum(int duration, const std::string& more) {
  return "<note><unpitched><display-step>B</display-step><display-octave>4</display-octave></unpitched><duration>" +
         std::to_string(duration) + "</duration><voice>1</voice>" + more + "</note>\n";
}

std::string joined(const std::string& kind, const std::string& type) {
  return "<technical><" + kind + " type=\"" + type + "\"/></technical>";
}

std::string words(const std::string& type) {
  return "<direction><direction-type>" + type + "</direction-type></direction>\n";
}

// A tab of these tunings, "E2" the bottom line first.
std::string tab_of(const std::vector<std::string>& tuning, const std::string& more = {}) {
  std::string details;
  for (std::size_t i = 0; i < tuning.size(); ++i) {
    details += "<staff-tuning line=\"" + std::to_string(i + 1) + "\"><tuning-step>" + tuning[i].substr(0, 1) +
               "</tuning-step><tuning-octave>" + tuning[i].substr(1) + "</tuning-octave></staff-tuning>";
  }
  return "<attributes><divisions>4</divisions><key><fifths>0</fifths><mode>major</mode></key>"
         "<time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>TAB</sign><line>5</line></clef>"
         "<staff-details><staff-lines>" +
         std::to_string(tuning.size()) + "</staff-lines>" + details + more + "</staff-details></attributes>\n";
}

const std::vector<std::string> four = {"E1", "A1", "D2", "G2"};
const std::string other_instrument = "help: choose another instrument with --instrument\n";

}  // namespace

TEST_CASE("a neck that no lesson can have is an error") {
  const auto refused = [](const std::string& attributes, const std::string& notes, const std::string& said,
                          const exchange::AdoptWish& wish = {}) {
    check_score(score_of(measure(1, attributes + notes)), {{"", "error: " + said + "\n" + other_instrument}}, false,
                wish);
  };
  refused(tab_of(four), note("E2", 16), "a banjo has five strings, and this tab 4", {"", "banjo", ""});
  refused(tab_of(std::vector<std::string>(13, "E2")), note("E2", 16),
          "no instrument has so many strings as this tab has lines");
  refused(tab_of({"E1", "A1", "D2", "G9"}), note("E2", 16), "no string is tuned to G9");
  refused(tab_of(four, "<capo>30</capo>"), note("E2", 16), "there is no capo at fret 30");
  refused(tab_of(four), at("E2", 1, 40, 16), "there is no fret 40");
  check_score(score_of(measure(1, tab_of({"H1", "A1", "D2", "G2"}) + note("E2", 16))),
              {{"<staff-tuning", "error: measure 1: a string's tuning is not sound\nhelp: export the score anew\n"}},
              false);
  // A banjo's short string has no fret 3.
  check_score(score_of(measure(1, tab_of({"G4", "D3", "G3", "B3", "D4"}) + at("B4", 5, 3, 16)), "Banjo"),
              {{"<note", "error: measure 1: there is no fret 3 on string 5\n" + other_instrument}}, false);
}

TEST_CASE("what no hand can play is an error that says why") {
  const auto unplayable = [](const std::string& notes, const std::string& tag, const std::string& why) {
    check({{notes,
            {{tag, "error: measure 1: " + why +
                       "\nhelp: choose another instrument with --instrument, or move the music to another octave\n"}}}},
          false);
  };
  unplayable(note("C8", 16), "<note", "C7 lies above the highest note of the guitar");
  // The lowest string open cannot be bent.
  unplayable(note("E3", 16, technical("<bend><bend-alter>2</bend-alter></bend>")), "<note",
             "E2 is nowhere on the guitar");
  unplayable(note("F3", 16, technical("<harmonic><natural/></harmonic>")), "<note", "no natural harmonic sounds F2");
  // E and F are both on the lowest string alone.
  unplayable(note("E3", 16) + note("F3", 16, "", "<chord/>"), "<note>#1",
             "no string is free for F2 beside the other notes of its chord");
  // Frets 1 and 19 or more.
  unplayable(note("F3", 16) + note("B6", 16, "", "<chord/>"), "<note>#1",
             "no hand reaches B5 and the other notes of its chord");
  unplayable(
      note("F3", 8, notations(joined("hammer-on", "start"))) + note("D4", 8, notations(joined("hammer-on", "stop"))),
      "<note>#1", "no hand spans the hammer-on or pull-off to D3");
  unplayable(
      note("E3", 8, notations(joined("hammer-on", "start"))) + note("E6", 8, notations(joined("hammer-on", "stop"))),
      "<note>#1", "E5 is on no string with the note that it is joined to");
}

TEST_CASE("signs on notes that cannot carry them are left out and named") {
  const std::string tie_start = "<tie type=\"start\"/>";
  const std::string tie_stop = "<tie type=\"stop\"/>";
  const std::string bow = technical("<up-bow/>");
  const std::string accent = notations("<articulations><accent/></articulations>");
  const std::string up = notations("<articulations><scoop/></articulations>");
  check(
      {
          {slash_attributes + strum(16, cross + accent), {left_out("<note", "an accent on a muted or ghost strum")}},
          {slash_attributes + strum(16, notations("<articulations><staccato/></articulations>")),
           {left_out("<note", "a note's sign on a strum")}},
          {slash_attributes + note("B4", 0, "", "<grace/>") + strum(16, ""),
           {left_out("<note", "a grace note before a rest or a strum")}},
          {note("B4", 0, "", "<grace/>") + note("", 8) + note("E4", 8),
           {left_out("<note", "a grace note before a rest or a strum")}},
          {e4 + note("B4", 0, "", "<grace/>"), {left_out("<note>#1", "a grace note with no note after it")}},
          {note("E4", 0, cross, "<grace/>") + e4, {left_out("<note", "a dead grace note")}},
          {note("E4", 16, notations(joined("pull-off", "stop"))), {left_out("<note", "a pull-off from no note")}},
          {note("E4", 16, notations("<slide type=\"stop\"/>")), {left_out("<note", "a slide from no note")}},
          {note("E4", 8, tie_start) + note("E4", 8, tie_stop + bow),
           {left_out("<note>#1", "a bow's sign on a note that is held on")}},
          {note("E4", 8, tie_start) + note("E4", 8, tie_stop + accent),
           {left_out("<note>#1", "an accent on a note that is held on")}},
          {note("E4", 8, tie_start) + note("E4", 8, tie_stop + up),
           {left_out("<note>#1", "a slide to a note that is held on")}},
          {note("E4", 16, cross + notations("<ornaments><wavy-line type=\"start\"/></ornaments>")),
           {left_out("<note", "a bend, vibrato or slide on a dead note")}},
          {note("E4", 16, "<notehead parentheses=\"yes\">x</notehead>"),
           {left_out("<note", "the parentheses around a dead note")}},
          {note("E5", 16,
                "<notehead parentheses=\"yes\">normal</notehead>" + technical("<harmonic><natural/></harmonic>")),
           {left_out("<note", "the parentheses around a harmonic")}},
          {at("D4", 4, 0, 8, joined("hammer-on", "start")) +
               note("E4", 8,
                    cross + notations("<technical><string>4</string></technical>" + joined("hammer-on", "stop"))),
           {left_out("<note>#1", "a sign that leads to a dead note")}},
          // A grace note on another string than the note that it is hammered from.
          {at("B3", 5, 2, 8, joined("hammer-on", "start")) +
               at("D4", 4, 0, 0, joined("hammer-on", "stop") + joined("pull-off", "start"), "<grace/>") +
               at("E4", 4, 2, 8, joined("pull-off", "stop")),
           {left_out("<note>#1", "a hammer-on or pull-off from no note")}},
          {note("E4", 16, technical("<string>4</string><fret>2</fret><pluck>i</pluck>")) +
               note("A4", 16, technical("<string>3</string><fret>2</fret>"), "<chord/>"),
           {left_out("<measure", "a plucking finger of one note among several, or of a note held on,")}},
      },
      true);
}

TEST_CASE("a sign that leads to a note held over a bar line is left out and named") {
  check_score(score_of(measure(1, plain_attributes + at("D4", 4, 0, 8, joined("hammer-on", "start")) +
                                      at("E4", 4, 2, 8, "<tied type=\"start\"/>")) +
                       measure(2, at("E4", 4, 2, 16, "<tied type=\"stop\"/>" + joined("hammer-on", "stop")))),
              {left_out("<note>#2", "a sign that leads to a note that is held on", "2")}, true);
}

TEST_CASE("a dead note that is tied beside a new note is struck again") {
  const std::string dead = cross + technical("<string>5</string>");
  check({{note("A3", 8, "<tie type=\"start\"/>" + dead) + at("E4", 4, 2, 8, "", "<chord/>") +
              note("A3", 8, "<tie type=\"stop\"/>" + dead) + at("D4", 4, 0, 8, "", "<chord/>"),
          {{"<note>#2",
            "warning: measure 1: a dead note that is tied is struck again\nhelp: a dead note does not sound on\n"}}}},
        true);
}

TEST_CASE("more than a measure of a lesson can hold is left out and named") {
  const auto wedge = [](const std::string& type, int number) {
    return words("<wedge type=\"" + type + "\" number=\"" + std::to_string(number) + "\"/>");
  };
  std::string nine;
  for (int number = 1; number <= 9; ++number) nine += wedge("crescendo", number);
  nine += e4;
  for (int number = 1; number <= 9; ++number) nine += wedge("stop", number);
  std::string verses;
  for (int verse = 1; verse <= 21; ++verse) {
    verses += "<lyric number=\"" + std::to_string(verse) + "\"><text>oh</text></lyric>";
  }
  const std::string harmony =
      "<harmony><root><root-step>C</root-step></root><kind>major</kind>" + std::string("</harmony>\n");
  check(
      {
          {nine, {left_out("<wedge#8", "a ninth line at once"), left_out("<wedge#17", "a line that nothing begins")}},
          {repeated(words("<rehearsal>A</rehearsal>"), 19) + e4, {left_out("<rehearsal#18", "a nineteenth sign")}},
          {note("E4", 16, verses), {left_out("<lyric", "a twenty-first syllable of one note")}},
          {note("E4", 16, repeated("<lyric number=\"1\"><text>oh</text></lyric>", 2)),
           {left_out("<lyric", "the second syllable of a verse at one count")}},
          {repeated(at("D4", 4, 0, 0, "", "<grace/>") + at("F4", 4, 3, 0, "", "<grace/>"), 6) +
               at("D4", 4, 0, 0, "", "<grace/>") + at("E4", 4, 2, 16),
           {{"<note",
             "warning: measure 1: a grace note is joined to its note as a hammer-on or pull-off\n"
             "help: a lesson's grace notes always lead to their note\n"},
            left_out("<note>#12", "a thirteenth grace note to one note")}},
          {repeated(harmony, 101) + e4,
           {left_out("<measure", "the second of two chords at one count"),
            left_out("<harmony#100", "a hundred and first chord")}},
          {"<harmony><root><root-step>C</root-step></root><kind>major</kind><frame/></harmony>\n" + e4,
           {left_out("<harmony", "a chord's `frame`")}},
          {"<sound><swing><first>2</first><second>1</second></swing></sound>\n"
           "<sound><swing><first>3</first><second>2</second></swing></sound>\n" +
               e4,
           {{"<swing#1",
             "warning: measure 1: the swing's ratio is taken as before\nhelp: a lesson has one 'swing-ratio'\n"}}},
      },
      true);
  const std::string segno = words("<segno/>");
  check_score(score_of(measure(1, plain_attributes + repeated(segno, 8) + e4) + measure(2, segno + e4)),
              {left_out("<segno#8", "a ninth way", "2")}, true);
}

TEST_CASE("elements without a sign in a lesson are named wherever they stand") {
  check(
      {
          {"<attributes><measure-style><beat-repeat type=\"start\"/></measure-style></attributes>\n" + e4,
           {left_out("<measure-style", "`beat-repeat`")}},
          {note("E4", 16, "<listen/>"), {left_out("<listen", "`listen`")}},
          {note("E4", 16, "<play><mute>straight</mute></play>"), {left_out("<mute", "`mute`")}},
          {note("E4", 16, "<lyric><text>oh</text><humming/></lyric>"), {left_out("<humming", "`humming`")}},
      },
      true);
}

TEST_CASE("a dynamic on a note is one of the measure") {
  const exchange::Adopted adopted = exchange::adopt(
      "a.musicxml",
      score_of(measure(1, plain_attributes + note("E4", 8) + note("E4", 8, notations("<dynamics><ff/></dynamics>")))),
      {});
  REQUIRE(adopted.lesson);
  CHECK(said_of(adopted).empty());
  CHECK(adopted.lesson->find("count | 1 2 3  4 |\nmark  |     ff   |\n") != std::string::npos);
}

TEST_CASE("a bar-repeat sign over no notes is said to be silent where a lesson cannot repeat") {
  const std::string two =
      "<attributes><measure-style><measure-repeat type=\"start\">2</measure-repeat></measure-style></attributes>\n";
  check_score(score_of(measure(1, plain_attributes + e4) + measure(2, note("G4", 16)) + measure(3, two + note("", 16))),
              {{"<measure#2",
                "warning: measure 3: a bar-repeat sign over no notes is left out, and its bar is silent\n"
                "help: a lesson's `%` repeats one bar of the same length: write the notes out\n"}},
              true);
}

TEST_CASE("bars with a slash on every beat around notes are a form, and what stands over them is named") {
  const std::string slash = strum(4, "<notehead>slash</notehead>");
  const auto chord = [](const std::string& step) {
    return "<harmony><root><root-step>" + step + "</root-step></root><kind>major</kind></harmony>\n";
  };
  const auto form = [&](const std::string& slashes, const std::vector<Said>& said) {
    const std::string score =
        score_of(measure(1, plain_attributes + slashes) + measure(2, chord("F") + e4) + measure(3, repeated(slash, 4)));
    check_score(score, said, true);
    return exchange::adopt("a.musicxml", score, {}).lesson.value_or("");
  };
  const std::string beats = repeated(slash, 4);
  const std::string lesson = form(chord("C") + beats, {});
  CHECK(lesson.find("form       = { bars = \"C F F\", here = \"2-2\", write-out = true }\n"
                    "tab = '''\ncount | 1 2 3 4 |\nchord | F       |\n") != std::string::npos);
  form(chord("C") + words("<dynamics><mf/></dynamics>") + beats,
       {left_out("<mf", "a sign or word over a form's slashes")});
  form(chord("C") + strum(4, "<notehead>slash</notehead><lyric><text>oh</text></lyric>") + repeated(slash, 3),
       {left_out("<measure", "a syllable or fermata at a form's slashes")});
  form("<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>\n" + chord("C") + beats,
       {left_out("<barline", "an ending over a form's slashes")});
  form(chord("C") + repeated(slash, 3) + chord("G") + slash,
       {{"<measure",
         "warning: measure 1: its chords stand at equal distances in the form's chart\n"
         "help: a form's bar shares its time out evenly\n"}});
  // Without a chord there is no form.
  check_score(score_of(measure(1, plain_attributes + beats) + measure(2, e4)),
              {{"<measure",
                "error: measure 1: from here on strums stand among notes\n"
                "help: an example of a lesson has notes, or is a rhythm of strums\n"}},
              false);
}

TEST_CASE("a second creator is named, and a title is found for a score without one") {
  std::string score = score_of(measure(1, plain_attributes + e4));
  score.insert(score.find("<part-list>"),
               "<identification><creator type=\"composer\">Ada Kelp</creator>\n"
               "<creator type=\"lyricist\">Finn Weir</creator></identification>\n");
  check_score(score,
              {{"<creator#1",
                "warning: a second creator, Finn Weir, is left out\n"
                "help: a lesson has one 'teacher': write others into its intro\n"}},
              true);
  const std::string work = "<work><work-title>Gull song</work-title></work>\n";
  score.erase(score.find(work), work.size());
  CHECK(exchange::adopt("a.musicxml", score, {}).lesson->starts_with("title      = \"Without a title\"\n"));
}

TEST_CASE("what makes a long or odd score no lesson is an error") {
  const std::string system = "<print new-system=\"yes\"/>\n";
  check_score(
      score_of(measure(1, plain_attributes + e4) + repeated(measure(1, system + e4), 500)),
      {{"<measure#500", "error: measure 1: here begins section 501\nhelp: a lesson has up to 500 examples\n"}},
      false);
  // A third of a whole note.
  check_score(score_of(measure(1,
                               "<attributes><divisions>3</divisions><key><fifths>0</fifths><mode>major</mode></key>"
                               "<time><beats>4</beats><beat-type>4</beat-type></time></attributes>\n" +
                                   note("E4", 12)) +
                       measure(2, note("E4", 4)) + measure(3, note("E4", 12))),
              {{"<measure#1",
                "error: measure 2: it lasts 1/3 of a whole note, which no meter does\n"
                "help: a lesson's meters have 1 to 64 counts over 1, 2, 4 … 64\n"}},
              false);
  const std::string full = repeated(note("E4", 1), 1000);
  std::string many = measure(1,
                             "<attributes><divisions>250</divisions><key><fifths>0</fifths><mode>major</mode></key>"
                             "<time><beats>4</beats><beat-type>4</beat-type></time></attributes>\n" +
                                 full);
  for (int number = 2; number <= 21; ++number) many += measure(number, full);
  check_score(score_of(many),
              {{"<note>#20000",
                "error: measure 21: up to here the section has 20000 notes and rests, and not all have a string and a "
                "fret\nhelp: take the score in parts\n"}},
              false);
  std::string empty = score_of("");
  check_score(empty, {{"<part id", "error: this part has no measure\nhelp: export the score anew\n"}}, false);
}

TEST_CASE("a score whose lesson would be too large is an error") {
  const std::string bar = repeated(words("<words>" + std::string(190, 'a') + "</words>"), 10) + e4;
  std::string many = measure(1, plain_attributes + bar);
  for (int number = 2; number <= 1400; ++number) many += measure(number, bar);
  check_score(
      score_of(many),
      {{"",
        "error: this music cannot be written as a lesson: this file is larger than 4 MiB, the most that is read\n"
        "help: split it into several\n"}},
      false);
}

TEST_CASE("the end of a text that no lesson can hold is left out, and this is said") {
  check_score(score_of(measure(1, plain_attributes + words("<words>" + std::string(5000, 'a') + "</words>") + e4)),
              {left_out("<words>", "the end of a long text")}, true);
  check({{note("E4", 16, "<lyric><text>" + std::string(5000, 'a') + "</text></lyric>"),
          {left_out("<lyric", "the end of a long text")}}},
        true);
  // Also where it would end as one that is cut does.
  std::string score = score_of(measure(1, plain_attributes + e4));
  score.insert(score.find("</work-title>"), std::string(5000, 'a') + "…");
  check_score(score,
              {{"<score-partwise",
                "warning: the end of a long text in the score's heading is left out\n"
                "help: a title has up to 500 characters\n"}},
              true);
}

TEST_CASE("damaged entries of an archive, and NUL characters, are refused") {
  const std::string anew = "help: export the score anew from the program that made it\n";
  const std::string score = score_of(measure(1, plain_attributes + e4));
  std::string packed =
      zip_of({{"META-INF/container.xml",
               "<container><rootfiles><rootfile full-path=\"score.musicxml\"/></rootfiles></container>"},
              {"score.musicxml", score}});
  // Inside the second entry's compressed bytes.
  const std::size_t second = packed.find("score.musicxml", packed.find("PK\x03\x04", 10));
  for (std::size_t i = 40; i < 60; ++i) packed[second + i] = static_cast<char>(packed[second + i] ^ 0x55);
  check_score(packed, {{"", "error: `score.musicxml` in this archive is damaged\n" + anew}}, false);
  std::string nul = score;
  nul[nul.find("Gull")] = '\0';
  check_score(nul, {{"", "error: this file holds a NUL character\nhelp: export the score anew\n"}}, false);
}
