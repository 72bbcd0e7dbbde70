// A capo in place of the lesson's: the shapes stay, what sounds moves, and all names with it.
#include <catch2/catch.hpp>
#include <string>

#include "fretboard/instrument.h"
#include "moving.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

Destination capo(int fret, const std::string& key = "") {
  Destination to;
  to.capo = fret;
  if (!key.empty()) to.key = to_key(key).key;
  return to;
}

const std::string rows =
    "count  | 1   2   3   4   |\n"
    "chord  | C       V7      |\n"
    "e      |         1   3   |\n"
    "B      | 1   2           |\n"
    "finger | 1   2   1   3   |\n"
    "spell  |     Db          |\n"
    "text   | \"{{chord C}}\"   |\n";

std::string guitar(const std::string& lesson_keys = "", const std::string& example_keys = "") {
  return lesson_text("C major", "guitar", rows, lesson_keys, example_keys);
}

std::string refused(const std::string& text, const Destination& to) {
  return refuse_capo(read(text), to).value_or("");
}

}  // namespace

TEST_CASE("a capo leaves every place and finger, and raises what sounds") {
  const lesson::Lesson before = read(guitar());
  const Moved there = moved(before, capo(2));
  CHECK(places(there.lesson) == "B1 B2 e1 e3");
  CHECK(pitches(there.lesson, 0) == std::vector<int>{62, 63, 67, 69});
  CHECK(there.lesson.neck.capo == 2);
  CHECK(there.lesson.neck.frets == 24);
  CHECK(there.lesson.key.to_string() == "D major");
  CHECK(there.lesson.examples[0].key.to_string() == "D major");
  CHECK(there.examples[0].semitones == 2);
  CHECK(there.examples[0].moved.empty());
  CHECK(there.lesson.examples[0].music.bars[0].events[3].notes[0].finger->value == "3");
  CHECK(said(guitar(), capo(2)).empty());
}

TEST_CASE("under a capo chords, texts and forced spellings are called as they sound") {
  const Moved there = moved(read(guitar()), capo(2));
  const lesson::Bar& bar = there.lesson.examples[0].music.bars[0];
  CHECK(theory::to_string(bar.chords[0].chord) == "D");
  CHECK(theory::to_string(bar.chords[1].chord) == "V7");
  CHECK(bar.events[1].notes[0].spell->value.to_string() == "Eb");
  CHECK(bar.texts[0].text == "{{chord D}}");
}

TEST_CASE("the key under a capo is the one of its sound with the fewest signs") {
  CHECK(key_there(read(guitar()), capo(1)).to_string() == "Db major");
  CHECK(key_there(read(guitar()), capo(6)).to_string() == "Gb major");
  CHECK(key_there(read(guitar()), capo(11)).to_string() == "B major");
  CHECK(key_there(read(guitar()), capo(0)).to_string() == "C major");
  CHECK(key_there(read(guitar()), capo(3, "E major")).to_string() == "E major");
}

TEST_CASE("a lower capo than the lesson's lowers what sounds") {
  std::string text = guitar("capo = 3\n");
  const lesson::Lesson before = read(text.replace(text.find("Db"), 2, "E "));
  const Moved there = moved(before, capo(0));
  CHECK(there.lesson.key.to_string() == "A major");
  CHECK(there.examples[0].semitones == -3);
  CHECK(places(there.lesson) == places(before));
  CHECK(pitches(there.lesson, 0) == std::vector<int>{60, 61, 65, 67});
  CHECK(there.lesson.examples[0].music.bars[0].events[1].notes[0].spell->value.to_string() == "C#");
}

TEST_CASE("pictures and boxes keep their frets under a capo, boxes the names as they sound") {
  const Moved there = moved(
      read(guitar("", "neck = { of = \"notes\", frets = \"0-4\" }\nshapes = [\"C x32010\", \"Am7\"]\n")), capo(2));
  const lesson::Example& example = there.lesson.examples[0];
  CHECK(example.neck->frets == std::pair(0, 4));
  CHECK(theory::to_string(example.shapes[0].chord) == "D");
  CHECK(example.shapes[0].frets == std::vector<std::optional<int>>{std::nullopt, 3, 2, 0, 1, 0});
  CHECK(theory::to_string(example.shapes[1].chord) == "Bm7");
}

TEST_CASE("with a key as well the capo is where it is, and the hand plays what is left") {
  const Moved there = moved(read(guitar()), capo(2, "E major"));
  CHECK(there.lesson.key.to_string() == "E major");
  CHECK(there.lesson.neck.capo == 2);
  CHECK(pitches(there.lesson, 0) == std::vector<int>{64, 65, 69, 71});
  CHECK(places(there.lesson) == "B3 B4 e3 e5");
}

TEST_CASE("with a key as well frets go down by what the capo gives, in shapes and pictures as in the notes") {
  const std::string example_keys =
      "neck = { of = \"key\", frets = \"7-12\" }\nshapes = [\"Dm7 x5756x\", \"C x32010\"]\n";
  const Moved there = moved(read(guitar("", example_keys)), capo(2, "C major"));
  CHECK(pitches(there.lesson, 0) == std::vector<int>{60, 61, 65, 67});
  const lesson::Example& example = there.lesson.examples[0];
  CHECK(example.neck->frets == std::pair(5, 10));
  CHECK(example.shapes[0].frets == std::vector<std::optional<int>>{std::nullopt, 3, 5, 3, 4, std::nullopt});
  CHECK_FALSE(example.shapes[1].frets);
  REQUIRE(there.examples[0].boxes_afresh.size() == 1);
  CHECK(theory::to_string(there.examples[0].boxes_afresh[0]) == "C");
  // The capo takes up the whole interval.
  const Moved up = moved(read(guitar("", example_keys)), capo(2, "D major"));
  CHECK(up.lesson.examples[0].neck->frets == std::pair(7, 12));
  CHECK(up.lesson.examples[0].shapes[1].frets == std::vector<std::optional<int>>{std::nullopt, 3, 2, 0, 1, 0});
}

TEST_CASE("under another capo a note has moved only where it left its string and the capo's fret") {
  const Moved there = moved(read(guitar()), capo(2, "D major"));
  CHECK(places(there.lesson) == "B1 B2 e1 e3");
  CHECK(there.examples[0].moved.empty());
}

TEST_CASE("on another instrument the capo raises what was found there") {
  Destination to = capo(2);
  to.instrument = fretboard::find_instrument("ukulele");
  const Moved there = moved(read(guitar()), to);
  CHECK(there.lesson.neck.capo == 2);
  CHECK(there.lesson.neck.frets == 15);
  CHECK(pitches(there.lesson, 0) == std::vector<int>{62, 63, 67, 69});
  CHECK(there.examples[0].semitones == 2);
}

TEST_CASE("where a capo cannot stand") {
  CHECK(refused(guitar(), capo(24)) == "a capo at fret 24 leaves nothing of a neck with 24 frets");
  CHECK(refused(guitar(), capo(22)) == "a capo at fret 22 leaves 2 frets, and bar 1 of example 1 goes higher");
  CHECK(refused(guitar("", "shapes = [\"C x-15-17-17-17-15\"]\n"), capo(12)) ==
        "a capo at fret 12 leaves 12 frets, and a chord shape of example 1 goes higher");
  CHECK(refused(guitar("", "neck = { of = \"key\", frets = \"7-16\" }\n"), capo(12)) ==
        "a capo at fret 12 leaves 12 frets, and the picture of the neck of example 1 goes higher");
  CHECK(refused(guitar(), capo(12)).empty());
  CHECK(refused(guitar("", "shapes = [\"C x-15-17-17-17-15\"]\n"), capo(12, "D major")).empty());
  Destination ukulele = capo(15);
  ukulele.instrument = fretboard::find_instrument("ukulele");
  CHECK(refused(guitar(), ukulele) == "a capo at fret 15 leaves nothing of a neck with 15 frets");
}
