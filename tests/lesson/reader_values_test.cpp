#include <catch2/catch.hpp>

#include "lesson/placeholder.h"
#include "lesson/reader_support.h"

// What sound keys come to.
namespace fretsheaf::lesson::test {
namespace {

Lesson sound(const std::string& text) {
  const ReadLesson found = read(text);
  CHECK(said(found) == "");
  REQUIRE(found.lesson);
  return *found.lesson;
}

theory::Tempo tempo(const std::string& written) {
  const auto found = sound(lesson_with("", "blank-bars = 2\ntempo = " + written)).examples.at(0).tempo;
  REQUIRE(found);
  return *found;
}

std::string notes_of(const Music& music) {
  std::string result;
  for (const Bar& bar : music.bars) {
    for (const ChordMark& chord : bar.chords)
      result += theory::to_string(chord.chord) + "@" + chord.at.to_string() + " ";
    for (const Event& event : bar.events) {
      result += event.at.to_string();
      for (const Note& note : event.notes) {
        result += (note.held ? "=" : ":") + std::to_string(note.place.string) + "/" + std::to_string(note.place.fret);
        if (note.approach == Approach::hammer_on) result += "h";
      }
      result += event.kind == EventKind::rest ? "r " : " ";
    }
    result += "| ";
  }
  return result;
}

}  // namespace

TEST_CASE("What a lesson does not say has its default") {
  const Lesson lesson = sound(lesson_with(""));
  CHECK(lesson.also_in.empty());
  CHECK(lesson.meter.to_string() == "4/4");
  CHECK(lesson.feel == theory::Feel::straight);
  CHECK(lesson.swing_ratio == theory::Rational(2));
  CHECK(lesson.staves == std::vector{Staff::slash, Staff::tab});
  CHECK(lesson.labels.empty());
  CHECK(lesson.template_name.value == "music-stand");
  CHECK_FALSE(lesson.paper);
  CHECK(lesson.language == "en");
  CHECK(lesson.note_names == NoteNames::letters);
  CHECK_FALSE(lesson.left_handed);
  CHECK_FALSE(lesson.name_line);
  CHECK(lesson.practice_log == 0);
  CHECK_FALSE(lesson.number);
  CHECK_FALSE(lesson.link);
  CHECK_FALSE(lesson.logo);
  const Example& example = lesson.examples.at(0);
  CHECK_FALSE(example.bars_per_line);
  CHECK_FALSE(example.tempo);
  CHECK(example.build_up == BuildUp::none);
  CHECK(example.blank_bars->value == 2);
  CHECK(example.music.bars.empty());
}

TEST_CASE("Frets by default: 24, and fewer on the smaller instruments") {
  const auto frets = [](const std::string& name) {
    return sound("title = \"T\"\nkey = \"C major\"\ninstrument = \"" + name + "\"\n[[example]]\nblank-bars = 1\n")
        .neck.frets;
  };
  // The lesson file's description.
  for (const char* name : {"bass", "bass-5", "bass-6", "guitar", "guitar-7"}) CHECK(frets(name) == 24);
  CHECK(frets("banjo") == 22);
  CHECK(frets("mandolin") == 20);
  CHECK(frets("tenor-banjo") == 19);
  CHECK(frets("ukulele") == 15);
  CHECK(frets("baritone-ukulele") == 15);
}

TEST_CASE("Keys that take other values than those of the description's example") {
  const Lesson lesson = sound(lesson_with(
      "meter = \"2+2+3/8\"\nfeel = \"swing-16\"\nswing-ratio = \"3:2\"\ntuning = [\"D1\", \"A1\", \"D2\"]\nfrets = 36\n"
      "capo = 35\nstaves = [\"tab\", \"notes\"]\nlabels = [\"counts\", \"fingers\"]\nbars-per-line = \"auto\"\n"
      "template = \"looks/mine.toml\"\npaper = \"letter\"\nlanguage = \"pt\"\nnote-names = \"letters-h\"\n"
      "link = \"mailto:shed@example.org\"\nhanded = \"left\"\nname-line = false\npractice-log = 60\nnumber = 0"));
  CHECK(lesson.examples.at(0).meter.to_string() == "2+2+3/8");
  CHECK(lesson.feel == theory::Feel::swing_16);
  CHECK(lesson.swing_ratio == theory::Rational(3, 2));
  CHECK(lesson.neck.strings() == 3);
  CHECK(lesson.neck.open_pitch(3).to_string() == "D1");
  CHECK(lesson.neck.last_fret() == 1);
  CHECK(lesson.staves == std::vector{Staff::tab, Staff::notes});
  CHECK(lesson.labels == std::vector{Label::counts, Label::fingers});
  CHECK_FALSE(lesson.examples.at(0).bars_per_line);
  CHECK(lesson.template_name.value == "looks/mine.toml");
  CHECK(lesson.paper == Paper::letter);
  CHECK(lesson.language == "pt");
  CHECK(lesson.note_names == NoteNames::letters_h);
  CHECK(lesson.link->value == "mailto:shed@example.org");
  CHECK(lesson.left_handed);
  CHECK(lesson.practice_log == 60);
  CHECK(lesson.number == 0);
}

TEST_CASE("An example overrides what its lesson says") {
  const Example example =
      sound(lesson_with("feel = \"swing\"\nlabels = [\"notes\"]\nbars-per-line = 4\nmeter = \"3/4\"",
                        "blank-bars = 1\nkey = \"A major\"\nmeter = \"6/8\"\nfeel = \"straight\"\nlabels = []\n"
                        "staves = [\"tab\"]\nbars-per-line = \"auto\""))
          .examples.at(0);
  CHECK(example.key.to_string() == "A major");
  CHECK(example.meter.to_string() == "6/8");
  CHECK(example.feel == theory::Feel::straight);
  CHECK(example.labels.empty());
  CHECK(example.staves == std::vector{Staff::tab});
  CHECK_FALSE(example.bars_per_line);
}

TEST_CASE("Also-in all is the other eleven keys of the mode") {
  const std::string written = GENERATE("\"all\"", "[\"all\"]");
  std::string keys;
  for (const auto& key : sound(lesson_with("also-in = " + written)).also_in) keys += key.value.to_string() + " ";
  // The twelve with the fewest signs, flats at six (the lesson file's description): Db dorian would have seven flats
  // against C#'s five sharps, and so on; counted by hand from the circle of fifths.
  CHECK(keys ==
        "C dorian C# dorian Eb dorian E dorian F dorian F# dorian G dorian Ab dorian A dorian Bb dorian B dorian ");
}

TEST_CASE("Also-in takes keys without their mode") {
  const auto keys = sound(lesson_with("also-in = [\"E\", \"Bb Dorian\"]")).also_in;
  REQUIRE(keys.size() == 2);
  CHECK(keys[0].value.to_string() == "E dorian");
  CHECK(keys[1].value.to_string() == "Bb dorian");
}

TEST_CASE("The forms of a tempo") {
  CHECK(theory::ladder_rungs(tempo("92")) == std::vector{92});
  CHECK_FALSE(tempo("92").ladder());
  CHECK(tempo("[80, 100]").pair);
  CHECK(tempo("[80, 100]").from == 80);
  CHECK(tempo("[80, 100]").to == 100);
  CHECK(theory::ladder_rungs(tempo("{ from = 60, to = 100, rungs = 5 }")) == std::vector{60, 70, 80, 90, 100});
  CHECK(theory::ladder_rungs(tempo("{ from = 50, to = 200, rungs = 3, spacing = \"ratio\" }")) ==
        std::vector{50, 100, 200});
  CHECK(tempo("{ from = 60, to = 100, step = 10, passes = 2 }").passes == 2);
  CHECK(tempo("{ from = 60, beat = \"dotted quarter\" }").beat == theory::Rational(3, 8));
  CHECK_FALSE(tempo("{ from = 60, beat = \"dotted quarter\" }").ladder());
  CHECK(theory::ladder_rungs(tempo("{ from = 20, to = 398, step = 7 }")).size() == 55);
}

TEST_CASE("A form's bars, their lines and their chords") {
  const auto form =
      sound(lesson_with("", "blank-bars = 1\nform = { bars = \" | Dm7,G7  i7 |\\n bVII | \", here = \"3\" }"))
          .examples.at(0)
          .form;
  REQUIRE(form);
  REQUIRE(form->chart.size() == 3);
  CHECK(form->chart[0].chords.size() == 2);
  CHECK(form->chart[0].begins_line);
  CHECK_FALSE(form->chart[1].begins_line);
  CHECK(form->chart[2].begins_line);
  CHECK(form->here_first == 3);
  CHECK(form->here_last == 3);
}

TEST_CASE("A form's repeats begin lines, and a bar like the one before has its chords") {
  const auto form =
      sound(lesson_with("", "blank-bars = 1\nform = { bars = \"|:Dm7 %:|:G7,C :| Am7\" }")).examples.at(0).form;
  REQUIRE(form);
  std::string text;
  for (const FormBar& bar : form->chart) {
    text += bar.begins_line ? "/" : "";
    text += bar.repeat_begin ? "|:" : "";
    for (const auto& chord : bar.chords) text += theory::to_string(chord) + ",";
    text += bar.same_as_previous ? "%" : "";
    text += bar.repeat_end ? ":|" : "";
    text += " ";
  }
  CHECK(text == "/|:Dm7, Dm7,%:| /|:G7,C,:| /Am7, ");
}

TEST_CASE("Pictures of the neck and chord boxes") {
  const Example example =
      sound(lesson_with("",
                        "blank-bars = 2\nneck = { of = \"chord i7\", labels = \"none\", frets = \"3-7\" }\n"
                        "shapes = [\"Dm7 x-10-12-11\", \"i7 0000\"]"))
          .examples.at(0);
  CHECK(example.neck->of == NeckPicture::Of::chord);
  CHECK(theory::to_string(example.neck->chord->value) == "i7");
  CHECK(example.neck->labels == NeckPicture::Labels::none);
  CHECK(example.neck->frets == std::pair{3, 7});
  CHECK(example.shapes.at(0).frets == std::vector<std::optional<int>>{std::nullopt, 10, 12, 11});
  CHECK(example.shapes.at(1).frets == std::vector<std::optional<int>>{0, 0, 0, 0});
}

TEST_CASE("Vary puts the notes of one example under the rhythm of another") {
  const Lesson lesson = sound(base + R"~(
[[example]]
tab = '''
chord | i7              | IV7             |
count | 1   2   3   4   | 1   2   3   4   |
G     | 2   h4  =       | (2)             |
D     |     0   2       | 5               |
'''

[[example]]
vary = 1
hide = ["rhythm"]
tab = '''
count | 1   2   3   (4) | 1   & 2 3   4   |
play  | *   *           | *     *         |
'''
)~");
  // The rest of bar 1 ends what sounds; a chord stays with the note it stood over.
  INFO(notes_of(lesson.examples.at(0).music));
  CHECK(find_struck(lesson.examples.at(1).music, 2, 2) != nullptr);
  CHECK(lesson.examples.at(1).music.has_strings);
  CHECK(notes_of(lesson.examples.at(1).music) == "i7@0 0:1/2 1/4:1/4h:2/0 3/4r | IV7@1/4 0:1/4:2/2 1/4:1/2:2/5 | ");
}

TEST_CASE("a tab in a line of text is a space") {
  const Lesson lesson = sound(
      "title = \"Low\ttide\"\nkey = \"C major\"\ninstrument = \"bass\"\n"
      "teacher = \"Eelgrass\\tStrings\"\n[[example]]\nblank-bars = 1\n");
  CHECK(lesson.title.value == "Low tide");
  CHECK(lesson.teacher == "Eelgrass Strings");
}

}  // namespace fretsheaf::lesson::test
