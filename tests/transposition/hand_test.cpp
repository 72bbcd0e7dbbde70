// What the hand is told, on the lesson's own neck and on another: written fingers, pictures, capos, instruments.
#include <catch2/catch.hpp>
#include <string>

#include "moving.h"
#include "theory/key.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

std::string fingers(const lesson::Lesson& lesson) {
  std::string all;
  for (const lesson::Bar& bar : lesson.examples[0].music.bars) {
    for (const lesson::Event& event : bar.events) {
      for (const lesson::Note& note : event.notes) all += note.finger ? note.finger->value : "-";
    }
  }
  return all;
}

Destination on(const char* instrument) {
  Destination to;
  to.instrument = fretboard::find_instrument(instrument);
  REQUIRE(to.instrument != nullptr);
  return to;
}

Destination under(int capo) {
  Destination to;
  to.capo = capo;
  return to;
}

std::string frets_of(const lesson::Shape& shape) {
  if (!shape.frets) return "";
  std::string text;
  for (const auto& fret : *shape.frets) text += fret ? std::to_string(*fret) : "x";
  return text;
}

}  // namespace

TEST_CASE("written fingers go along where the whole bar goes one way, and are dropped with a warning elsewhere") {
  const std::string rows =
      "count  | 1   2   | % | 1   2   |\n"
      "A      | 5   7   |   | 0   3   |\n"
      "finger | 1   3   |   | 0   3   |\n";
  const std::string text = lesson_text("D dorian", "bass", rows);
  const Moved up = moved(read(text), "E dorian");
  CHECK(fingers(up.lesson) == "1313--");
  CHECK(up.lesson.examples[0].music.has_finger_row);
  CHECK(up.examples[0].bars_without_fingers == std::vector<int>{3});
  CHECK(said(text, to_key("E dorian")) ==
        "8:22: warning: in E dorian the written fingers of bar 3 do not fit the new places, and are left out\n");
  CHECK(fingers(moved(read(text), "D dorian").lesson) == "131303");
  // A fourth up the strings of a bass the hand keeps its shape, open strings and all.
  CHECK(said(text, to_key("G dorian")) == "");
  CHECK(fingers(moved(read(text), "G dorian").lesson) == "131303");
}

TEST_CASE("where no written finger is left there is no row of fingers") {
  const std::string rows = "count  | 1   2   |\nA      | 0   3   |\nfinger | 0   3   |\n";
  const Moved up = moved(read(lesson_text("A minor", "bass", rows)), "B minor");
  CHECK(fingers(up.lesson) == "--");
  CHECK_FALSE(up.lesson.examples[0].music.has_finger_row);
}

TEST_CASE("chord shapes without open strings move, any other is worked out afresh") {
  const std::string rows = "count | 1 |\nA     | 5 |\n";
  const std::string shapes = "shapes = [\"Dm7 x535\", \"G7 3x0x\", \"Am7\"]\n";
  const lesson::Lesson lesson = read(lesson_text("D dorian", "bass", rows, "", shapes));
  const auto shape = [&](const char* key, std::size_t i) {
    const Moved there = moved(lesson, key);
    return to_string(there.lesson.examples[0].shapes[i].chord) + " " + frets_of(there.lesson.examples[0].shapes[i]);
  };
  CHECK(shape("E dorian", 0) == "Em7 x757");
  CHECK(shape("E dorian", 1) == "A7 ");
  CHECK(shape("E dorian", 2) == "Bm7 ");
  CHECK(shape("D dorian", 1) == "G7 3x0x");
  // Three frets down its third fret would be open, which is another shape: an octave up there is room.
  CHECK(shape("B dorian", 0) == "Bm7 x141214");
}

TEST_CASE("the frets of a neck picture go with the notes, or with the key") {
  const std::string rows = "count | 1   2   |\nA     | 5   7   |\n";
  const auto frets = [&](const std::string& of, const char* key) {
    const std::string neck = "neck = { of = \"" + of + "\", frets = \"4-8\" }\n";
    const Moved there = moved(read(lesson_text("D dorian", "bass", rows, "", neck)), key);
    const auto range = there.lesson.examples[0].neck->frets;
    return range ? std::to_string(range->first) + "-" + std::to_string(range->second) : "none";
  };
  CHECK(frets("notes", "E dorian") == "6-10");
  CHECK(frets("key", "E dorian") == "6-10");
  CHECK(frets("key", "C dorian") == "2-6");
  CHECK(frets("chord Dm7", "A dorian") == "11-15");  // five down would be past the nut
}

TEST_CASE("a capo leaves every fret and moves every name") {
  const std::string rows =
      "count | 1   2   |\nchord | C   G7  |\nA     | 3   2   |\nE     |     3   |\nspell | C   B,G |\n";
  const lesson::Lesson lesson = read(lesson_text("C major", "guitar", rows, "capo = 1\n"));
  const Moved there = moved(lesson, under(3));
  CHECK(there.lesson.key.to_string() == "D major");
  CHECK(there.lesson.neck.capo == 3);
  CHECK(places(there.lesson) == places(lesson));
  CHECK(there.examples[0].semitones == 2);
  CHECK(to_string(there.lesson.examples[0].music.bars[0].chords[1].chord) == "A7");
  CHECK(key_there(lesson, under(2)).to_string() == "Db major");
  CHECK(moved(lesson, under(0)).lesson.key.to_string() == "B major");
  CHECK(moved(lesson, under(1)).lesson.key.to_string() == "C major");
}

TEST_CASE("with a key and a capo the key is what sounds") {
  const std::string rows = "count | 1   2   |\nA     | 3   2   |\n";
  const lesson::Lesson lesson = read(lesson_text("C major", "guitar", rows));
  Destination to = to_key("D major");
  to.capo = 2;
  const Moved there = moved(lesson, to);
  CHECK(there.lesson.key.to_string() == "D major");
  CHECK(places(there.lesson) == "A3 A2");
  CHECK(pitches(there.lesson, 0) == std::vector<int>{50, 49});
}

TEST_CASE("on another instrument the notes are found anew, an octave off where its range wants it") {
  const std::string rows = "count | 1   2   3   4   |\nA     | 3   5   7   x   |\n";
  const lesson::Lesson lesson = read(lesson_text("C major", "bass", rows));
  const Moved ukulele = moved(lesson, on("ukulele"));
  CHECK(ukulele.lesson.instrument->name == "ukulele");
  CHECK(ukulele.examples[0].semitones % 12 == 0);
  CHECK(pitches(ukulele.lesson, 0).front() == 36 + ukulele.examples[0].semitones);
  CHECK(ukulele.examples[0].moved.empty());
  Destination guitar = on("guitar");
  guitar.capo = 2;
  const Moved there = moved(lesson, guitar);
  CHECK(there.lesson.key.to_string() == "D major");
  CHECK(there.lesson.neck.capo == 2);
  CHECK(there.lesson.neck.frets == 24);
  CHECK(pitches(there.lesson, 0).front() % 12 == 2);
}

TEST_CASE("a lesson that another instrument has no room for is an error that says so") {
  const std::string rows = "count | 1   2   |\nG     |     24  |\nE     | 0       |\n";
  CHECK(said(lesson_text("C major", "bass", rows), on("ukulele")) ==
        "8:9: error: in C major on the ukulele this note of bar 1 would be E1, and the neck's lowest note is C4\n");
}

TEST_CASE("a slide from nowhere still comes from nowhere, and a hammer-on from the note before on its string") {
  const std::string rows =
      "count | 1   2   3   4   |\n"
      "D     |     5           |\n"
      "A     | 5       h7  /9  |\n";
  for (const theory::Mode mode : {theory::Mode::dorian}) {
    for (int fifths = -6; fifths < 6; ++fifths) {
      const theory::Key key{theory::note_name_from_fifths(fifths), mode};
      if (!theory::parse_key(key.to_string())) continue;
      const Moved there = moved(read(lesson_text("D dorian", "bass", rows)), key.to_string());
      const auto& events = there.lesson.examples[0].music.bars[0].events;
      CAPTURE(key.to_string(), places(there.lesson));
      CHECK(events[2].notes[0].place.string == events[0].notes[0].place.string);
      CHECK(events[3].notes[0].place.string == events[2].notes[0].place.string);
      CHECK(events[1].notes[0].place.string != events[0].notes[0].place.string);
    }
  }
}
