// What a student's copy of an exercise has, and what it lacks.
#include "score/exercise.h"

#include <catch2/catch.hpp>
#include <string>

#include "score/build.h"
#include "score/build_up.h"
#include "spell_out.h"

using namespace fretsheaf;
using score::Rational;

namespace {

score::Example copy_of(const std::string& keys, const std::string& rows, score::Copy copy) {
  source::Diagnostics diagnostics;
  const lesson::Lesson lesson = score::test::read(score::test::bass_in_c, keys + "\n" + score::test::grid(rows));
  score::Score score = score::build_score(lesson, diagnostics, copy);
  CHECK(diagnostics.list().empty());
  return score.examples.front();
}

score::Example student(const std::string& keys, const std::string& rows) {
  return copy_of(keys, rows, score::Copy::student);
}

// "0 1/4 1/2-": where a bar's events begin; "-" after blank ones.
std::string places(const score::Bar& bar) {
  std::string text;
  for (const score::Event& event : bar.events) {
    text += (text.empty() ? "" : " ") + event.at.to_string() + (event.blank ? "-" : "");
  }
  return text;
}

std::string chord_places(const score::Bar& bar) {
  std::string text;
  for (const score::ChordMark& mark : bar.chords) text += (text.empty() ? "" : " ") + mark.at.to_string();
  return text;
}

}  // namespace

TEST_CASE("hidden rhythm: what is struck stands evenly over its bar, without rests, ties, values or counts") {
  const score::Example example = student("hide = [\"rhythm\"]\nlabels = [\"counts\"]",
                                         "count | 1  & (2) 3  | 1   2   | (1)     | 1 la li 3 4 |\n"
                                         "chord | C     F     | G       |         |             |\n"
                                         "A     | 3  5     7  |     5   |         | 3 5  7  5 3 |\n");
  CHECK(places(example.bars[0]) == "0 1/3 2/3");
  CHECK(places(example.bars[1]) == "0");  // the note of bar 1 that is held into it is not struck again
  CHECK(places(example.bars[2]) == "0-");
  CHECK(places(example.bars[3]) == "0 1/5 2/5 3/5 4/5");
  CHECK(chord_places(example.bars[0]) == "0 1/3");
  for (const score::Bar& bar : example.bars) {
    CHECK(bar.tuplets.empty());
    for (const score::Event& event : bar.events) {
      CHECK(event.value == score::NoteValue{});
      CHECK_FALSE((event.rest || event.tie_from || event.tie_to || event.count || event.beamed()));
    }
  }
  CHECK_FALSE(example.show_counts);
}

TEST_CASE("hidden rhythm: more chords than notes have places of their own") {
  const score::Example example = student("hide = [\"rhythm\"]",
                                         "count | 1       3       |\n"
                                         "chord | C       G       |\n"
                                         "A     | 3               |\n");
  CHECK(places(example.bars[0]) == "0 1/2-");
  CHECK(chord_places(example.bars[0]) == "0 1/2");
}

TEST_CASE("hidden rhythm: a pickup and a bar that ends early do not tell how long they are") {
  for (const char* rows :
       {"count |: 4 & | 1 2 3 :|\nA     |:   3 | 5 5 5 :|\n", "count |: 3 4 | 1 2   :|\nA     |: 3   | 5 5   :|\n"}) {
    const score::Example example = student("hide = [\"rhythm\"]", rows);
    CHECK(example.bars[0].begin == Rational(1, 2));
    CHECK(places(example.bars[0]) == "1/2");
    CHECK(example.bars[1].end == Rational(1, 2));
  }
}

TEST_CASE("hidden rhythm: a hairpin goes with the notes that it stood at, or the next and the one before") {
  const score::Example example = student("hide = [\"rhythm\"]",
                                         "count | 1   2   3   4   |\n"
                                         "mark  |     <-------    |\n"
                                         "A     | 3       5   7   |\n");
  CHECK(places(example.bars[0]) == "0 1/3 2/3");
  REQUIRE(example.spans.size() == 1);
  CHECK(example.spans[0].first.at == Rational(1, 3));
  CHECK(example.spans[0].last.at == Rational(1, 3));
}

TEST_CASE("hidden frets: no note is left, and the slash staff has the rhythm, its heads and articulations") {
  const std::string rows =
      "count | 1   2   3   & 4    |\n"
      "A     | 3>  x   h5_ (5)    |\n";
  const std::string keys = "hide = [\"frets\"]\nstaves = [\"notes\", \"tab\"]\nlabels = [\"notes\", \"key-degrees\"]";
  const score::Example example = student(keys, rows);
  for (const score::Event& event : example.bars[0].events) {
    CHECK(event.notes.empty());
    CHECK((event.note_name.empty() && event.degree.empty()));
  }
  CHECK(score::test::text(example.bars[0]) == score::test::text(copy_of(keys, rows, score::Copy::answer_key).bars[0]));
  CHECK(example.bars[0].events[0].touch->accent);
  CHECK(example.bars[0].events[1].slash == score::HeadKind::dead);
  CHECK(example.bars[0].events[2].touch->tenuto);
  CHECK(example.bars[0].events[3].slash == score::HeadKind::ghost);
  CHECK(example.staves == std::vector<lesson::Staff>{lesson::Staff::slash, lesson::Staff::notes, lesson::Staff::tab});
}

TEST_CASE("hidden labels: no label is left, and the rows that are to be written") {
  const std::string rows =
      "count  | 1 2 (3) 4 |\n"
      "finger | 1 2     4 |\n"
      "A      | 3 5     7 |\n";
  const std::string labels = "labels = [\"key-degrees\", \"notes\", \"counts\"]\n";
  for (const std::string hide : {"hide = [\"labels\"]\n", "hide = [\"labels\", \"frets\", \"rhythm\"]\n"}) {
    CAPTURE(hide);
    const score::Example example = student(hide + labels, rows);
    CHECK((example.show_degrees && example.show_notes && example.show_fingers && example.show_counts));
    CHECK(example.degree_kinds == std::vector<lesson::Label>{lesson::Label::key_degrees});
    for (const score::Event& event : example.bars[0].events) {
      CHECK((event.degree.empty() && event.note_name.empty() && !event.count));
      for (const score::Note& note : event.notes) CHECK(note.finger.empty());
    }
  }
  const score::Example frets = student("hide = [\"frets\"]\n" + labels, rows);
  CHECK((!frets.show_degrees && !frets.show_notes && !frets.show_fingers && frets.show_counts));
}

TEST_CASE("hidden chords: neither the chords nor the degrees in them, nor what they would have spelled") {
  const std::string rows =
      "count | 1   2   3   4   |\n"
      "chord | E7              |\n"
      "A     | 7   11  7   11  |\n";
  const std::string labels = "labels = [\"chord-degrees\", \"notes\"]\n";
  const score::Example shown = copy_of(labels, rows, score::Copy::student);
  const score::Example hidden = student("hide = [\"chords\"]\n" + labels, rows);
  CHECK(shown.bars[0].events[1].note_name == "G♯");
  CHECK(shown.bars[0].events[1].degree == "3");
  CHECK(hidden.bars[0].chords.empty());
  CHECK(hidden.bars[0].events[1].degree.empty());
  const score::Example without = student("labels = [\"notes\"]\n", "count | 1 2  3 4  |\nA     | 7 11 7 11 |\n");
  CHECK(hidden.bars[0].events[1].note_name == without.bars[0].events[1].note_name);
}

TEST_CASE("chords are to be written where the example stands in its form, and shown elsewhere") {
  const score::Example written =
      student("hide = [\"chords\"]\nform = { bars = \"i7 V7 i7\", here = \"2-2\", write-out = true }",
              "count | 1 2 3 4 |\nchord | G7      |\nA     | 3 5 7 8 |\n");
  REQUIRE(written.bars.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(written.bars[i].chords_to_write == (i == 1));
    CHECK(written.bars[i].chords.empty() == (i == 1));
  }
}

TEST_CASE("a neck of hidden notes has no marks, and a student's marks whose labels are hidden say nothing") {
  const std::string rows = "count | 1 2 3 4 |\nA     | 3 5 7 8 |\n";
  const auto neck = [&](const std::string& hidden, score::Copy copy) {
    return *copy_of("hide = [\"" + hidden + "\"]\nneck = { of = \"notes\" }", rows, copy).neck;
  };
  const score::NeckPicture empty = neck("frets", score::Copy::student);
  CHECK(empty.marks.empty());
  CHECK((empty.first == 0 && empty.last == 12 && !empty.answers));
  const score::NeckPicture key = neck("frets", score::Copy::answer_key);
  CHECK(key.marks.size() == 4);
  CHECK(key.answers);
  const score::NeckPicture bare = neck("labels", score::Copy::student);
  REQUIRE(bare.marks.size() == 4);
  for (const score::NeckMark& mark : bare.marks) CHECK((mark.label.empty() && !mark.root));
  CHECK(neck("labels", score::Copy::answer_key).marks.front().label == "1");
}

TEST_CASE("the answer key has everything") {
  const std::string rows =
      "count | 1   & (2) 3     |\n"
      "chord | C               |\n"
      "A     | 3   5     7     |\n";
  const std::string all = "hide = [\"frets\", \"rhythm\", \"labels\", \"chords\"]\n";
  const std::string labels = "labels = [\"notes\"]\n";
  const score::Example open = student(labels, rows);
  const score::Example key = copy_of(all + labels, rows, score::Copy::answer_key);
  CHECK(score::test::text(key.bars[0]) == score::test::text(open.bars[0]));
  CHECK(key.bars[0].events[0].note_name == "C");
  CHECK(key.bars[0].chords.size() == 1);
  CHECK(key.hidden.rhythm);
}

TEST_CASE("blank bars have the meter, their number and nothing else") {
  source::Diagnostics diagnostics;
  const lesson::Lesson lesson = score::test::read(score::test::bass_in_c, "meter = \"3/4\"\nblank-bars = 3\n");
  const score::Example example = score::build_score(lesson, diagnostics).examples.front();
  REQUIRE(example.bars.size() == 3);
  CHECK(example.blank);
  CHECK(places(example.bars[1]) == "0-");
  CHECK(example.bars[1].events[0].length == Rational(3, 4));
  CHECK((example.bars[0].show_meter && !example.bars[1].show_meter));
  CHECK(example.bars[2].right == lesson::BarSign::final);
}

TEST_CASE("blank bars keep the pictures, and the form that they stand in") {
  source::Diagnostics diagnostics;
  const auto example = [&](const std::string& form) {
    const lesson::Lesson lesson = score::test::read(
        score::test::bass_in_c, "blank-bars = 1\nshapes = [\"C\"]\nneck = { of = \"key\" }\nform = " + form + "\n");
    return score::build_score(lesson, diagnostics).examples.front();
  };
  const score::Example chart = example("{ bars = \"C F G\", here = \"2\" }");
  CHECK(chart.boxes.size() == 1);
  REQUIRE(chart.neck);
  CHECK_FALSE(chart.neck->marks.empty());
  REQUIRE(chart.form);
  CHECK(chart.bars.size() == 1);
  const score::Example written = example("{ bars = \"C F G\", here = \"2\", write-out = true }");
  REQUIRE(written.bars.size() == 3);
  CHECK(written.bars[0].events[0].beat_slash);
  CHECK(places(written.bars[1]) == "0-");
  CHECK(written.bars[1].number == 2);
  REQUIRE(written.bars[1].chords.size() == 1);
  CHECK(theory::to_string(*written.bars[1].chords[0].chord) == "F");
  CHECK(diagnostics.list().empty());
}

namespace {

std::string spoken(lesson::BuildUp way, int bars) {
  std::string text;
  for (const score::Step& step : score::build_up_of(way, bars)) {
    text += text.empty() ? "" : " ";
    text += step.whole ? "all" : std::to_string(step.first);
    if (!step.whole && step.last > step.first) text += "-" + std::to_string(step.last);
  }
  return text;
}

}  // namespace

// The lesson format: "bars (1, 2, 3, all) | pairs (1, 2, 1–2, …) | add-one (1, 1–2, 1–3, …)".
TEST_CASE("a build-up goes to the whole by bars, by pairs or one bar more each time") {
  using lesson::BuildUp;
  CHECK(spoken(BuildUp::none, 4).empty());
  CHECK(spoken(BuildUp::bars, 3) == "1 2 3 all");
  CHECK(spoken(BuildUp::pairs, 4) == "1 2 1-2 3 4 3-4 all");
  CHECK(spoken(BuildUp::pairs, 5) == "1 2 1-2 3 4 3-4 5 all");
  CHECK(spoken(BuildUp::pairs, 2) == "1 2 all");
  CHECK(spoken(BuildUp::add_one, 4) == "1 1-2 1-3 all");
  for (const BuildUp way : {BuildUp::bars, BuildUp::pairs, BuildUp::add_one}) CHECK(spoken(way, 1) == "all");
}
