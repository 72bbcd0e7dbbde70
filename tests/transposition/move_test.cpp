#include "transposition/move.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "moving.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

const std::string walk =
    "count | 1   2   3   4   | 1   2   3   4   |\n"
    "chord | Dm7             | G7/B            |\n"
    "D     |         2   3   |                 |\n"
    "A     | 5   3           | 2       5       |\n"
    "E     |                 |     3           |\n";

int moved_by(const std::string& text, const std::string& key, std::size_t example = 0) {
  return moved(read(text), key).examples[example].semitones;
}

}  // namespace

TEST_CASE("a lesson moves by the nearest interval, down at a tritone") {
  const std::string text = lesson_text("D dorian", "bass", walk);
  CHECK(moved_by(text, "D dorian") == 0);
  CHECK(moved_by(text, "E dorian") == 2);
  CHECK(moved_by(text, "C dorian") == -2);
  CHECK(moved_by(text, "G dorian") == 5);
  CHECK(moved_by(text, "A dorian") == 7);  // down a fourth its G1 would be D1, below the neck
  const std::string high = lesson_text("D dorian", "bass", "count | 1 |\nD     | 7 |\n");
  CHECK(moved_by(high, "A dorian") == -5);
  CHECK(moved_by(high, "G# dorian") == -6);
  CHECK(moved_by(high, "Ab dorian") == -6);
}

TEST_CASE("where the nearest does not fit the neck the whole lesson goes an octave the other way") {
  const std::string text = lesson_text("E minor", "bass", "count | 1   2   |\nE     | 0   3   |\n");
  CHECK(moved_by(text, "D minor") == 10);
  CHECK(pitches(moved(read(text), "D minor").lesson, 0) == std::vector<int>{38, 41});
}

TEST_CASE("one interval serves all examples, and where none does, each has its own") {
  const std::string low = "\n[[example]]\ntab = '''\ncount | 1   2   |\nE     | 0   3   |\n'''\n";
  const std::string high = "\n[[example]]\ntab = '''\ncount | 1   2   |\nG     | 20  17  |\n'''\n";
  const std::string middle = "\n[[example]]\ntab = '''\ncount | 1   2   |\nD     | 7   9   |\n'''\n";
  const std::string top = "title = \"Slipway\"\nkey = \"E minor\"\ninstrument = \"bass\"\n";
  // Down a tone there is no room under example 1, and so both go up.
  CHECK(moved_by(top + low + middle, "D minor", 0) == 10);
  CHECK(moved_by(top + low + middle, "D minor", 1) == 10);
  // Example 2 has no room up there: now each goes the nearest way that it can.
  CHECK(moved_by(top + low + high, "D minor", 0) == 10);
  CHECK(moved_by(top + low + high, "D minor", 1) == -2);
}

TEST_CASE("keys, chords and forced spellings move along the line of fifths, numerals stay") {
  const std::string rows =
      "count | 1   2   3   4   |\n"
      "chord | Bbmaj7  V7/ii   |\n"
      "A     | 1   4           |\n"
      "spell |     Db          |\n";
  const Moved there = moved(read(lesson_text("F major", "bass", rows)), "E major");
  const lesson::Bar& bar = there.lesson.examples[0].music.bars[0];
  CHECK(there.lesson.key.to_string() == "E major");
  CHECK(there.lesson.examples[0].key.to_string() == "E major");
  CHECK(theory::to_string(bar.chords[0].chord) == "Amaj7");
  CHECK(theory::to_string(bar.chords[1].chord) == "V7/ii");
  CHECK(bar.events[1].notes[0].spell->value.to_string() == "C");  // the b6 of F, and of E
}

TEST_CASE("an example with a key of its own moves along, to one that has a signature") {
  const std::string own =
      "\n[[example]]\nkey = \"A major\"\ntab = '''\ncount | 1   2   |\nchord | A   E   |\nD     | 7   9   |\n'''\n";
  const std::string text = lesson_text("D dorian", "bass", walk) + own;
  const Moved up = moved(read(text), "E dorian");
  CHECK(up.lesson.examples[0].key.to_string() == "E dorian");
  CHECK(up.lesson.examples[1].key.to_string() == "B major");
  CHECK(up.examples[1].semitones == 2);
  // A major goes a tritone away to D# major, which has nine sharps: Eb major it is.
  const Moved far = moved(read(text), "G# dorian");
  CHECK(far.lesson.examples[1].key.to_string() == "Eb major");
  CHECK(theory::to_string(far.lesson.examples[1].music.bars[0].chords[1].chord) == "Bb");
}

TEST_CASE("chords in texts move, numerals and degrees follow by themselves, and texts of a sheaf.toml stay") {
  const std::string text = lesson_text(
      "D dorian", "bass", walk,
      "intro = \"From {{chord Dm7}} to {{ chord  G7/B }}, the {{chord IV7}}; {{note 1.1}}, {{key}} and {Dm7}.\"\n",
      "practice = [\"Land on {{chord Dm7}}.\"]\n");
  const Moved there = moved(read(text), "Eb dorian");
  CHECK(there.lesson.intro->value ==
        "From {{chord Ebm7}} to {{ chord  Ab7/C }}, the {{chord IV7}}; {{note 1.1}}, {{key}} and {Dm7}.");
  CHECK(there.lesson.examples[0].practice[0].value == "Land on {{chord Ebm7}}.");
}

TEST_CASE("bars written % stay copies, and what is held stays in its place") {
  const std::string rows =
      "count | 1   2   3   4   | % | 1   2   3   4   |\n"
      "D     |         0   2   |   | =   0           |\n"
      "A     | 0   2           |   |                 |\n";
  for (const char* key : {"Eb dorian", "C dorian", "G dorian", "B dorian"}) {
    CAPTURE(key);
    const Moved there = moved(read(lesson_text("D dorian", "bass", rows)), key);
    const lesson::Music& music = there.lesson.examples[0].music;
    REQUIRE(music.bars.size() == 3);
    for (std::size_t e = 0; e < 4; ++e) {
      CHECK(music.bars[0].events[e].notes[0].place == music.bars[1].events[e].notes[0].place);
    }
    CHECK(music.bars[2].events[0].notes[0].held);
    CHECK(music.bars[2].events[0].notes[0].place == music.bars[1].events[3].notes[0].place);
  }
}

TEST_CASE("a varied example has the notes of the other in their new places") {
  const std::string text = lesson_text("D dorian", "bass", walk) +
                           "\n[[example]]\nvary = 1\ntab = '''\ncount | 1   &   2   &   3   &   4   |\n'''\n";
  for (const char* key : {"F dorian", "A dorian", "C# dorian"}) {
    CAPTURE(key);
    const Moved there = moved(read(text), key);
    CHECK(places(there.lesson, 1).size() == places(there.lesson, 0).size() - 2);  // but for its bar line
    CHECK(there.examples[1].semitones == there.examples[0].semitones);
    CHECK(theory::to_string(there.lesson.examples[1].music.bars[0].chords[0].chord) ==
          theory::to_string(there.lesson.examples[0].music.bars[0].chords[0].chord));
  }
}

TEST_CASE("the report has what does not lie where a plain shift would put it") {
  const std::string rows = "count | 1   2   |\nA     | 3   5   |\nE     |         |\n";
  const Moved near = moved(read(lesson_text("C major", "bass", rows)), "D major");
  CHECK(places(near.lesson) == "A5 A7");
  CHECK(near.examples[0].moved.empty());
  const Moved down = moved(read(lesson_text("C major", "bass", rows)), "Ab major");
  CHECK(places(down.lesson) == "E4 A1");
  REQUIRE(down.examples[0].moved.size() == 1);
  CHECK(down.examples[0].moved[0].bar == 1);
  CHECK(down.examples[0].moved[0].at == theory::Rational(0));
  CHECK(down.examples[0].moved[0].from == fretboard::Place{3, 3});
  CHECK(down.examples[0].moved[0].to == fretboard::Place{4, 4});
}

TEST_CASE("a key that an example cannot reach is an error that names the note, its bar and the limit") {
  const auto said_of = [](const std::string& rows, const std::string& key, const std::string& instrument = "bass") {
    return said(lesson_text("C major", instrument, rows), to_key(key));
  };
  // From the lowest note to the highest.
  const std::string wide = "count | 1   2   |\nG     |     24  |\nE     | 0       |\n";
  CHECK(said_of(wide, "D major") ==
        "7:13: error: in D major this note of bar 1 would be A4, and the neck's highest note is G4\n");
  CHECK(said_of(wide, "Bb major") ==
        "8:9: error: in Bb major this note of bar 1 would be D1, and the neck's lowest note is E1\n");
  CHECK(said_of("count | 1   |\nG     | <4> |\n", "Db major") ==
        "7:9: error: in Db major this harmonic of bar 1 would be C5, and no string has a natural harmonic that sounds "
        "so\n");
}

TEST_CASE("the highest note may be a banjo's open short string") {
  const std::string rows =
      "count | 1   3   |\n"
      "d     | 4       |\n"
      "D     |     0   |\n";
  CHECK(said(lesson_text("C major", "banjo", rows, "capo = 18\n"), to_key("D major")) ==
        "8:9: error: in D major this note of bar 1 would be D6, and the neck's highest note is C#6\n");
}
