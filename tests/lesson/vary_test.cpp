#include "lesson/reader_support.h"

// The notes of another example under a new rhythm.
namespace fretsheaf::lesson::test {
namespace {

const std::string source_rows =
    "count  | 1 2 3 4  | 1    2 |\n"
    "chord  | i7       | IV7    |\n"
    "D      |     5 h7 | 5      |\n"
    "A      | 5 3      | 7    5 |\n"
    "hand   | i m      |        |\n";

ReadLesson varied(const std::string& rows, const std::string& source = source_rows, const std::string& top = "") {
  return read(base + top + "[[example]]\ntab = '''\n" + source + "'''\n[[example]]\nvary = 1\ntab = '''\n" + rows +
              "'''\n");
}

std::string place(const Note& note) {
  std::string text = std::to_string(note.place.string) + "/" + std::to_string(note.place.fret);
  if (note.held) text += "=";
  if (note.approach == Approach::hammer_on) text += "h";
  if (note.hand) text += note.hand->value;
  return text;
}

// "0: 3/5i; 1/4: …": each event with where it begins, "r" for a rest, chords in parentheses, bars apart by "|".
std::string text(const Example& example) {
  std::string out;
  for (const Bar& bar : example.music.bars) {
    for (const Event& event : bar.events) {
      out += event.at.to_string() + ":";
      for (const ChordMark& mark : bar.chords) {
        if (mark.at == event.at) out += "(" + theory::to_string(mark.chord) + ")";
      }
      if (event.kind == EventKind::rest) out += " r";
      for (const Note& note : event.notes) out += " " + place(note);
      out += "; ";
    }
    out += "| ";
  }
  return out;
}

std::string variation(const std::string& rows, const std::string& source = source_rows) {
  const ReadLesson found = varied(rows, source);
  INFO(said(found));
  REQUIRE(found.lesson);
  return text(found.lesson->examples[1]);
}

}  // namespace

TEST_CASE("a variation has the source's notes in order under its own counts, chords with them") {
  CHECK(variation("count | 1 & 2 & (3) 4 | 1 |\n") ==
        "0:(i7) 3/5i; 1/8: 3/3m; 1/4: 2/5; 3/8: 2/7h; 1/2: r; 3/4:(IV7) 2/5 3/7; | 0: 3/5; | ");
}

TEST_CASE("a play row says where the notes fall: counts without a star hold, over bar lines too") {
  CHECK(variation("count | 1 2 3 4 | 1 2 3 4 | 1 2 3 4 |\n"
                  "play  | *   *   |   *   * | *   *   |\n") ==
        "0:(i7) 3/5i; 1/2: 3/3m; | 0: 3/3=; 1/4: 2/5; 3/4: 2/7h; | 0:(IV7) 2/5 3/7; 1/2: 3/5; | ");
}

TEST_CASE("what a variation strikes, or holds over a bar line, are notes and no strums") {
  for (const std::string rows : {"count | 1 & 2 & 3 4 |\n", "count | 1 & 2 & 3 & 4 |\nplay  | * * * * * *   |\n",
                                 "count | 1 2 3 4 | 1 2 3 4 |\nplay  | * * *   |   * * * |\n"}) {
    const ReadLesson found = varied(rows);
    REQUIRE(found.lesson);
    for (const Bar& bar : found.lesson->examples[1].music.bars) {
      for (const Event& event : bar.events) CHECK_FALSE(event.strum);
    }
  }
}

TEST_CASE("a variation's own chords and plucking hand take the place of the source's") {
  CHECK(variation("count | 1 & 2 & 3   4 |\n"
                  "chord | v7            |\n"
                  "hand  | p   p   i,p   |\n") ==
        "0:(v7) 3/5p; 1/8: 3/3; 1/4: 2/5p; 3/8: 2/7h; 1/2: 2/5i 3/7p; 3/4: 3/5; | ");
}

TEST_CASE("a variation follows when its source is edited, and a note more is an error with both numbers") {
  const std::string rows = "count | 1 & 2 & 3 4 |\n";
  CHECK(variation(rows, "count | 1 2 3 4 | 1 2 |\nA     | 0 2 3 5 | 7 8 |\n") ==
        "0: 3/0; 1/8: 3/2; 1/4: 3/3; 3/8: 3/5; 1/2: 3/7; 3/4: 3/8; | ");
  CHECK(said(varied(rows, "count | 1 2 3 4 | 1 2 3 (4) |\nA     | 0 2 3 5 | 7 8 9     |\n")) ==
        "10:8-9: error: example 1 has 7 notes, and this rhythm has places for 6\n"
        "help: write more counts, so that every note has its place\n");
}

}  // namespace fretsheaf::lesson::test
