// A lesson on another instrument.
#include "fretboard/instrument.h"

#include <catch2/catch.hpp>
#include <string>

#include "moving.h"
#include "transposition/strings.h"
#include "transposition/unreachable.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;
using namespace fretsheaf::transposition::test;

namespace {

Destination on(const std::string& instrument, const std::string& key = "") {
  Destination to;
  to.instrument = fretboard::find_instrument(instrument);
  REQUIRE(to.instrument != nullptr);
  if (!key.empty()) to.key = to_key(key).key;
  return to;
}

std::string places_on(const std::string& from, const std::string& rows, const Destination& to) {
  const lesson::Lesson before = read(lesson_text("C major", from, rows));
  const Moved there = moved(before, to);
  CHECK(there.lesson.instrument == to.instrument);
  CHECK(there.lesson.neck.tuning == to.instrument->tuning);
  CHECK(there.lesson.neck.frets == to.instrument->frets);
  if (!to.key) CHECK(pitches(there.lesson, 0) == pitches(before, 0));
  return places(there.lesson);
}

fretboard::Neck neck_of(const std::string& name) {
  const fretboard::Instrument& found = *fretboard::find_instrument(name);
  return {found.tuning, found.frets, 0, found.short_fifth_string};
}

// "1>1 2>2 3>-".
std::string parts(const std::string& from, const std::string& to) {
  std::string text;
  const StringsThere there = strings_there(neck_of(from), neck_of(to));
  for (std::size_t i = 0; i < there.size(); ++i) {
    text += (text.empty() ? "" : " ") + std::to_string(i + 1) + ">" + (there[i] ? std::to_string(*there[i]) : "-");
  }
  return text;
}

const std::string line =
    "count | 1   2   3   4   |\n"
    "D     |         2   5   |\n"
    "A     | 3   5           |\n";

}  // namespace

TEST_CASE("strings take each other's part where one neck is a part of the other") {
  CHECK(parts("bass", "bass-5") == "1>1 2>2 3>3 4>4");
  CHECK(parts("bass", "bass-6") == "1>2 2>3 3>4 4>5");
  CHECK(parts("bass-5", "bass") == "1>1 2>2 3>3 4>4 5>-");
  CHECK(parts("baritone-ukulele", "guitar") == "1>1 2>2 3>3 4>4");
  CHECK(parts("guitar", "guitar-7") == "1>1 2>2 3>3 4>4 5>5 6>6");
  CHECK(parts("guitar", "guitar") == "1>1 2>2 3>3 4>4 5>5 6>6");
  CHECK(parts("guitar", "ukulele") == "1>- 2>- 3>- 4>- 5>- 6>-");
  CHECK(parts("banjo", "baritone-ukulele") == "1>- 2>- 3>- 4>- 5>-");
  CHECK(parts("bass", "guitar") == "1>- 2>- 3>- 4>-");  // an octave apart is not alike
}

TEST_CASE("where the strings are there, the hand does what it did") {
  CHECK(places_on("bass", line, on("bass-5")) == "A3 A5 D2 D5");
  CHECK(places_on("bass", line, on("bass-6")) == "A3 A5 D2 D5");
  CHECK(places_on("baritone-ukulele", "count | 1   2   3   |\nE     | 3       0   |\nB     |     5       |\n",
                  on("guitar")) == "e3 B5 e0");
  // Down a fourth there is room now, on the string below.
  CHECK(places_on("bass", "count | 1   2   |\nE     | 3   0   |\n", on("bass-5", "G major")) == "B3 B0");
}

TEST_CASE("written fingers go along to the same strings of a longer neck") {
  const Moved there = moved(read(lesson_text("C major", "bass",
                                             "count  | 1   2   3   4   |\n"
                                             "D      |         2   4   |\n"
                                             "A      | 3   5           |\n"
                                             "finger | 2   4   1   4   |\n")),
                            on("bass-6"));
  CHECK(there.lesson.examples[0].music.bars[0].events[3].notes[0].finger->value == "4");
  CHECK(there.examples[0].bars_without_fingers.empty());
}

TEST_CASE("where they are not, the line lies as one that has no original") {
  // The same five notes in first position: common practice.
  const std::string tune = "count | 1   2   3   4   |\nE     | 0   1   3       |\nC     |             2   |\n";
  CHECK(places_on("ukulele", tune, on("guitar")) == "e0 e1 e3 B3");
  CHECK(places_on("ukulele", tune, on("mandolin")) == "D2 D3 D5 D0");
}

TEST_CASE("a lesson that an instrument does not reach is an error at the note") {
  CHECK(said(lesson_text("C major", "bass", "count | 1   2   |\nG     |     24  |\nE     | 0       |\n"),
             on("ukulele")) ==
        "8:9: error: on the ukulele this note of bar 1 would be E1, and the neck's lowest note is C4\n");
  CHECK(said(lesson_text("C major", "guitar", "count | 1   2   |\ne     |     24  |\nE     | 0       |\n"),
             on("mandolin", "D major")) ==
        "8:9: error: in D major on the mandolin this note of bar 1 would be F#2, and the neck's lowest note is G3\n");
  // Four strings have no room for a fifth, damped one.
  CHECK(said(lesson_text("C major", "guitar",
                         "count | 1   |\ne     | 0   |\nB     | 1   |\nG     | 12  |\nD     | 19  |\nA     | x   |\n"),
             on("ukulele")) ==
        "11:9: error: on the ukulele this dead note of bar 1 would find no string that the notes around it leave "
        "free\n");
}

TEST_CASE("the help says what else may be asked for") {
  const auto help = [](const Destination& to) {
    const lesson::Lesson lesson =
        read(lesson_text("C major", "bass", "count | 1   2   |\nG     |     24  |\nE     | 0       |\n"));
    source::Diagnostics diagnostics;
    CHECK(!move(lesson, to, diagnostics));
    return diagnostics.list().front().help;
  };
  CHECK(help(to_key("D major")) == "leave this key out, or write the example where it has more room to move");
  CHECK(help(on("ukulele")) == "name another key with it, or write the example where it has more room to move");
  CHECK(help(on("ukulele", "D major")) == "leave this key out, or write the example where it has more room to move");
}

TEST_CASE("a note that no hand has with what is held says so") {
  const lesson::Lesson lesson = read(lesson_text("C major", "bass", line));
  const fretboard::Neck neck = lesson.neck;
  const StringsThere strings = strings_there(neck, neck);
  const PlayingLine looked_for = playing_line(lesson.examples[0], {neck, strings, 2});
  const fretboard::UnplayableNote missed{{1, 0}, fretboard::Unplayable::out_of_reach, 90};
  source::Diagnostics diagnostics;
  report_missed({lesson.examples[0], looked_for, missed, neck, to_key("D major").key.value(), {"in D major", "wait"}},
                diagnostics);
  REQUIRE(diagnostics.list().size() == 1);
  CHECK(diagnostics.list()[0].message ==
        "in D major this note of bar 1 would be E2, and no hand has it with what sounds at its count");
}
