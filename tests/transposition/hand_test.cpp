// The rules of the hand, from a lesson's rows to what lies where in another key: written fingers, harmonics, dead
// notes, and the words for what cannot be played. Places and spans are computed by hand: L (1 - 2^(-n/12)).
#include <catch2/catch.hpp>
#include <string>

#include "moving.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

// The finger words, bar by bar; "." where a note has none.
std::string fingers(const lesson::Lesson& lesson) {
  std::string text;
  for (const lesson::Bar& bar : lesson.examples[0].music.bars) {
    if (!text.empty()) text += " |";
    for (const lesson::Event& event : bar.events) {
      for (const lesson::Note& note : event.notes) {
        text += (text.empty() ? "" : " ") + (note.finger ? note.finger->value : ".");
      }
    }
  }
  return text;
}

struct Asked {
  std::string instrument = "bass";
  std::string from = "C major";
  std::string keys;  // more of the lesson's own
};

std::string text_of(const std::string& rows, const Asked& asked = {}) {
  return lesson_text(asked.from, asked.instrument, rows, asked.keys);
}

// What is said of a move, and nothing else.
std::string said_of(const std::string& rows, const std::string& key, const Asked& asked = {}) {
  return said(text_of(rows, asked), to_key(key));
}

std::string places_in(const std::string& rows, const std::string& key, const Asked& asked = {}) {
  return places(moved(read(text_of(rows, asked)), key).lesson);
}

}  // namespace

TEST_CASE("written fingers go along where a bar lies as it did, also on other strings") {
  const std::string rows =
      "count  | 1   2   3   4   |\n"
      "D      |         2   4   |\n"
      "A      | 3   5           |\n"
      "finger | 2   4   1   3   |\n";
  for (const char* key : {"D major", "G major"}) {
    CAPTURE(key);
    CHECK(said_of(rows, key).empty());
    CHECK(fingers(moved(read(text_of(rows)), key).lesson) == "2 4 1 3");
  }
  CHECK(places_in(rows, "D major") == "A5 A7 D4 D6");
  CHECK(places_in(rows, "G major") == "E3 E5 A2 A4");
}

TEST_CASE("an open string's 0 goes to another open string, and to no stopped one") {
  const std::string rows =
      "count  | 1   2   |\n"
      "A      | 0   2   |\n"
      "finger | 0   2   |\n";
  const Asked minor{"bass", "A minor", ""};
  CHECK(said_of(rows, "E minor", minor).empty());
  CHECK(places_in(rows, "E minor", minor) == "E0 E2");
  CHECK(said_of(rows, "B minor", minor) ==
        "8:10: warning: in B minor the written fingers of bar 1 do not fit the new places, and are left out\n");
  CHECK(places_in(rows, "B minor", minor) == "A2 A4");
  CHECK(fingers(moved(read(text_of(rows, minor)), "B minor").lesson) == ". .");
}

TEST_CASE("fingers are dropped bar by bar, and the warning names the bars") {
  const Asked two{"bass", "C major", "meter = \"2/4\"\n"};
  const std::string four =
      "count  | 1   2   | %   | 1   2   | 1   2   |\n"
      "D      |         |     |         |         |\n"
      "A      | 3   5   |     | 5   3   | 7   9   |\n"
      "finger | 1   3   |     | 3   1   | 1   3   |\n";
  CHECK(said_of(four, "Ab major", two) ==
        "10:10: warning: in Ab major the written fingers of bars 1 and 3 do not fit the new places, and are left "
        "out\n");
  const Moved there = moved(read(text_of(four, two)), "Ab major");
  CHECK(places(there.lesson) == "E4 A1 | E4 A1 | A1 E4 | A3 A5");
  CHECK(fingers(there.lesson) == ". . | . . | . . | 1 3");
  CHECK(there.examples[0].bars_without_fingers == std::vector<int>{1, 3});
  CHECK(there.lesson.examples[0].music.has_finger_row);
}

TEST_CASE("natural harmonics are found again at their sounding pitch, on whatever string and node has it") {
  const Asked guitar{"guitar", "E major", ""};
  const std::string rows = "count | 1    |\ne     | <12> |\n";
  CHECK(places_in(rows, "B major", guitar) == "<B12>");  // down a fourth: the octave of the next string
  CHECK(places_in(rows, "D major", guitar) == "<G7>");   // D5, the third partial of G3 (and, fainter, the fourth of D3)
  CHECK(places_in(rows, "A major", guitar) == "<D3>");   // A5, the sixth
  for (const char* key : {"B major", "D major", "A major"}) {
    CAPTURE(key);
    const lesson::Lesson before = read(text_of(rows, guitar));
    const Moved there = moved(before, key);
    CHECK(pitches(there.lesson, 0)[0] == pitches(before, 0)[0] + there.examples[0].semitones);
  }
}

TEST_CASE("a harmonic that no string has is an error, or else moves the whole lesson an octave on") {
  const Asked guitar{"guitar", "E major", ""};
  // F5 is a partial of no string; F4, an octave lower, of none either, and F6 of none up to the sixth.
  CHECK(said_of("count | 1    2   |\ne     | <12>     |\nE     |      0   |\n", "F major", guitar) ==
        "7:9: error: in F major this harmonic of bar 1 would be F5, and no string has a natural harmonic that sounds "
        "so\n");
}

TEST_CASE("a dead note stays on the string of its neighbour, in its event or else the one before") {
  const std::string rows =
      "count | 1   2   3   |\n"
      "A     | 3   x   5   |\n";
  CHECK(places_in(rows, "D major") == "A5 Ax A7");
  CHECK(places_in(rows, "Ab major") == "E4 Ex A1");
  const std::string chord =
      "count | 1   2   |\n"
      "D     | x   2   |\n"
      "A     | 3       |\n";
  CHECK(places_in(chord, "G major") == "Ax+E3 A2");
}

TEST_CASE("what cannot be played is an error at its note: below, above, and between") {
  const std::string wide = "count | 1   2   |\nG     |     24  |\nE     | 0       |\n";
  CHECK(said_of(wide, "D major") ==
        "7:13: error: in D major this note of bar 1 would be A4, and the neck's highest note is G4\n");
  // A neck of two frets has no place for G1, which would be the third fret of its lowest string.
  CHECK(said_of("count | 1   2   |\nG     |     1   |\nE     | 2       |\n", "Db major",
                {"bass", "C major", "frets = 2\n"}) ==
        "9:9: error: in Db major this note of bar 1 would be G1, and no string has it\n");
  // E1 is the open string alone, and a vibrato needs a finger.
  CHECK(said_of("count | 1   2   |\nG     |     24  |\nE     | 1~      |\n", "B major") ==
        "8:9: error: in B major this note of bar 1 would be E1, and no string has it where a finger can press it\n");
}

TEST_CASE("what cannot be played is an error at its note: chords") {
  // F1 and G1 are both on the lowest string alone.
  CHECK(said_of("count | 1   2   |\nG     |     24  |\nA     | 2       |\nE     | 5       |\n", "Ab major") ==
        "9:9: error: in Ab major this note of bar 1 would be F1, and the strings that have it are taken by the other "
        "notes at its count\n");
  // F1 is at the first fret, and the lowest place of Ab3 at the thirteenth: 863.6 mm (2^(-1/12) - 2^(-13/12)).
  CHECK(said_of("count | 1   |\nG     | 12  |\nE     | 0   |\n", "Db major") ==
        "8:9: error: in Db major this note of bar 1 would be F1, and lie 408 mm from the other notes at its count, "
        "where a hand reaches 130 mm\n");
}

TEST_CASE("what cannot be played is an error at its note: hammer-ons, pull-offs, slides and grace notes") {
  // From the open string to the octave no hand spans anything; from fret 1 to 13 there are 408 mm.
  CHECK(said_of("count | 1   2    |\nE     | 0  h12   |\n", "Db major") ==
        "7:12: error: in Db major this note of bar 1 would be F2, and its hammer-on would span 408 mm, where a hand "
        "reaches 130 mm\n");
  CHECK(said_of("count | 1   2    |\nE     | 12 p0    |\n", "Db major") ==
        "7:12: error: in Db major this note of bar 1 would be F1, and its pull-off would span 408 mm, where a hand "
        "reaches 130 mm\n");
  CHECK(said_of("count |  1       |\nE     | 0h12     |\n", "Db major") ==
        "7:10: error: in Db major this note of bar 1 would be F2, and lie 408 mm from its grace note, where a hand "
        "reaches 130 mm\n");
  // G1 and F3 are on no string together, and an octave on the one is open where the other is not.
  CHECK(said_of("count | 1   2    |\nE     | 2  /24   |\n", "Db major") ==
        "7:12: error: in Db major this note of bar 1 would be F3, and no string has both ends of its slide\n");
  CHECK(said_of("count |  1       |\nE     | 2/24     |\n", "Db major") ==
        "7:10: error: in Db major this note of bar 1 would be F3, and no string has both ends of its slide\n");
}

TEST_CASE("what is held is in the hand's reach like all else") {
  CHECK(said_of("count | 1   2    |\nG     |     12   |\nE     | 0   =    |\n", "Db major") ==
        "8:13: error: in Db major this note of bar 1 would be F1, and lie 408 mm from the other notes at its count, "
        "where a hand reaches 130 mm\n");
}

TEST_CASE("a slide from nowhere keeps off the strings that have sounded, where it would start from their notes") {
  const std::string rows =
      "count | 1   2   |\n"
      "D     | 0       |\n"
      "A     |     /4  |\n";
  // B1 is on the A string, where C2 has just been, and on the lowest.
  const Moved there = moved(read(text_of(rows)), "Bb major");
  CHECK(places(there.lesson) == "A3 E7");
  CHECK(there.lesson.examples[0].music.bars[0].events[1].notes[0].approach_from_nowhere);
  CHECK(there.examples[0].semitones == -2);
}

TEST_CASE("a joint that would start elsewhere on every string is an error at its count") {
  // Up there is no room for the last note. Down a tone the chord has F#1 on the lowest string and so C2 on the next, and
  // those are the two that have B1.
  const std::string rows =
      "count | 1   2   3   |\n"
      "G     |         15  |\n"
      "D     | 0           |\n"
      "A     |     /4      |\n"
      "E     | 4           |\n";
  CHECK(said_of(rows, "Bb major") ==
        "6:13: error: in Bb major a hammer-on, pull-off or slide of bar 1 would not start where it does now\n");
}

TEST_CASE("where each example has its own interval, every one that fits nowhere is named") {
  const std::string wide = "\n[[example]]\ntab = '''\ncount | 1   2   |\nG     |     24  |\nE     | 0       |\n'''\n";
  const std::string fits = "\n[[example]]\ntab = '''\ncount | 1   2   |\nA     | 3   5   |\n'''\n";
  const std::string top = "title = \"Slipway\"\nkey = \"C major\"\ninstrument = \"bass\"\n";
  CHECK(said(top + wide + fits + wide, to_key("D major")) ==
        "8:13: error: in D major this note of bar 1 would be A4, and the neck's highest note is G4\n"
        "21:13: error: in D major this note of bar 1 would be A4, and the neck's highest note is G4\n");
}
