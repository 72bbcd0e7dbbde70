// What neck pictures and chord boxes say in another key.
#include <catch2/catch.hpp>
#include <string>

#include "fretboard/instrument.h"
#include "moving.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

// "3-7", or "fit" where the frets are to be chosen.
std::string frets_of(const lesson::Lesson& lesson) {
  const auto& frets = lesson.examples[0].neck->frets;
  return frets ? std::to_string(frets->first) + "-" + std::to_string(frets->second) : "fit";
}

const std::string walk =
    "count | 1   2   3   4   |\n"
    "D     |         2   4   |\n"
    "A     | 3   5           |\n";

std::string neck_in(const std::string& picture, const std::string& key, const std::string& rows = walk) {
  const lesson::Lesson lesson = read(lesson_text("C major", "bass", rows, "", "neck = { " + picture + " }\n"));
  return frets_of(moved(lesson, key).lesson);
}

// "Am7 x-0-2", the bottom line first; "Am7" where the frets are to be worked out.
std::string shapes_of(const lesson::Lesson& lesson) {
  std::string text;
  for (const lesson::Shape& shape : lesson.examples[0].shapes) {
    text += (text.empty() ? "" : ", ") + theory::to_string(shape.chord);
    if (!shape.frets) continue;
    for (std::size_t i = 0; i < shape.frets->size(); ++i) {
      const auto& fret = (*shape.frets)[i];
      text += (i == 0 ? " " : "-") + (fret ? std::to_string(*fret) : "x");
    }
  }
  return text;
}

std::string shapes_in(const std::string& shapes, const std::string& key, const std::string& instrument = "guitar") {
  const std::string rows = "count | 1   |\nD     | 12  |\n";
  return shapes_of(
      moved(read(lesson_text("C major", instrument, rows, "", "shapes = [" + shapes + "]\n")), key).lesson);
}

}  // namespace

TEST_CASE("a picture of the notes goes where they go, as wide as it was") {
  CHECK(neck_in("of = \"notes\", frets = \"2-7\"", "D major") == "4-9");
  // Down a fourth the same shape is on the strings below, at the same frets.
  CHECK(neck_in("of = \"notes\", frets = \"2-7\"", "G major") == "2-7");
  CHECK(neck_in("of = \"notes\"", "D major") == "fit");
}

TEST_CASE("a picture that covers the notes stays over them, a chord's or the key's as well") {
  CHECK(neck_in("of = \"key\", frets = \"2-5\"", "G major") == "2-5");
  CHECK(neck_in("of = \"chord C\", frets = \"0-5\"", "G major") == "0-5");
}

TEST_CASE("a picture of another part of the neck goes along with the pitches, or lies an octave on") {
  CHECK(neck_in("of = \"key\", frets = \"7-12\"", "D major") == "9-14");
  CHECK(neck_in("of = \"key\", frets = \"7-12\"", "G major") == "2-7");
  // Down four frets there is no room.
  CHECK(neck_in("of = \"key\", frets = \"0-2\"", "Ab major") == "8-10");
  CHECK(neck_in("of = \"chord C\", frets = \"12-24\"", "D major") == "2-14");
}

TEST_CASE("a picture of the whole neck stays one") {
  CHECK(neck_in("of = \"key\", frets = \"0-24\"", "D major") == "0-24");
  CHECK(neck_in("of = \"notes\", frets = \"0-24\"", "Ab major") == "0-24");
}

TEST_CASE("a movable shape moves the nearest way that fits, down to open strings") {
  CHECK(shapes_in("\"F 133211\"", "D major") == "G 3-5-5-4-3-3");
  CHECK(shapes_in("\"F 133211\"", "B major") == "E 0-2-2-1-0-0");
  CHECK(shapes_in("\"F 133211\"", "Bb major") == "Eb 11-13-13-12-11-11");
  CHECK(shapes_in("\"Dm7 x5756x\"", "Eb major") == "Fm7 x-8-10-8-9-x");
}

TEST_CASE("a shape with open strings is worked out afresh, and one given as a numeral is another chord's") {
  CHECK(shapes_in("\"C x32010\", \"V7\", \"IV 133211\"", "D major") == "D, V7, IV 3-5-5-4-3-3");
  CHECK(shapes_in("\"C x32010\"", "C major") == "C x-3-2-0-1-0");
}

TEST_CASE("the report names the chords whose given shapes could not move") {
  const lesson::Lesson lesson =
      read(lesson_text("D dorian", "bass", walk, "", "shapes = [\"Dm7 x535\", \"G7 3x0x\", \"i7\", \"IV7 3x0x\"]\n"));
  const Moved there = moved(lesson, "E dorian");
  REQUIRE(there.examples[0].boxes_afresh.size() == 2);
  CHECK(theory::to_string(there.examples[0].boxes_afresh[0]) == "A7");
  CHECK(theory::to_string(there.examples[0].boxes_afresh[1]) == "A7");
  CHECK(moved(lesson, "D dorian").examples[0].boxes_afresh.empty());
}

TEST_CASE("a banjo's short string ends at its nut") {
  CHECK(shapes_in("\"C 10-5-5-5-5\"", "D major", "banjo") == "D 12-7-7-7-7");
  CHECK(shapes_in("\"C 10-5-5-5-5\"", "A major", "banjo") == "A 7-2-2-2-2");
  CHECK(shapes_in("\"C 10-5-5-5-5\"", "G major", "banjo") == "G 17-12-12-12-12");
}

TEST_CASE("on another instrument both are worked out afresh") {
  Destination to;
  to.instrument = fretboard::find_instrument("guitar");
  const lesson::Lesson lesson =
      read(lesson_text("C major", "baritone-ukulele", "count | 1   |\nB     | 1   |\n", "",
                       "neck = { of = \"notes\", frets = \"0-4\" }\nshapes = [\"F 3211\"]\n"));
  const Moved there = moved(lesson, to);
  CHECK(frets_of(there.lesson) == "fit");
  CHECK(shapes_of(there.lesson) == "F");
}
