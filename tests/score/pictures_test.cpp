#include <catch2/catch.hpp>
#include <map>
#include <string>

#include "score/build.h"
#include "score/printed.h"
#include "spell_out.h"
#include "theory/keys.h"

using namespace fretsheaf;
using score::Example;
using score::test::grid;

namespace {

const std::string bass = "title = \"Slipway\"\ninstrument = \"bass\"\n";
const std::string bass_in_d = bass + "key = \"D dorian\"\n";
const std::string low_line = grid(
    "count  | 1 2 3 4 | 1 2 3 4 |\n"
    "D      |   5   3 | 2       |\n"
    "A      | 5       |     x 4 |\n"
    "finger | 3 4   1 |       2 |\n");

Example example(const std::string& lesson_keys, const std::string& in_example) {
  return score::test::built(score::test::read(lesson_keys, in_example));
}

// "0-7: 1/2=♭3 2/0=1!": frets shown, then string/fret=label, roots with an exclamation mark.
std::string text(const score::NeckPicture& picture) {
  std::string out = std::to_string(picture.first) + "-" + std::to_string(picture.last) + ":";
  for (const score::NeckMark& mark : picture.marks) {
    out += " " + std::to_string(mark.place.string) + "/" + std::to_string(mark.place.fret) + "=" + mark.label +
           (mark.root ? "!" : "");
  }
  return out;
}

std::string neck(const std::string& lesson_keys, const std::string& keys, const std::string& music = low_line) {
  const Example built = example(lesson_keys, "neck = { " + keys + " }\n" + music);
  REQUIRE(built.neck);
  return text(*built.neck);
}

std::string text(const score::Bar& bar) {
  std::string out = std::to_string(bar.number) + ":";
  for (const score::ChordMark& mark : bar.chords) {
    out += " " + (mark.chord ? score::printed(*mark.chord, {}) : std::string("N.C.")) + "@" + mark.at.to_string();
  }
  for (const score::Event& event : bar.events) {
    if (event.beat_slash) out += " /";
  }
  using Sign = lesson::BarSign;
  const std::map<Sign, std::string> signs = {{Sign::plain, " |"},         {Sign::doubled, " ||"},
                                             {Sign::repeat_begin, " |:"}, {Sign::repeat_end, " :|"},
                                             {Sign::repeat_both, " :|:"}, {Sign::final, " |."}};
  return out + signs.at(bar.right);
}

std::string bars(const Example& example) {
  std::string out;
  for (const score::Bar& bar : example.bars) out += (out.empty() ? "" : "; ") + text(bar);
  return out;
}

std::string shape(const score::ChordBox& box) {
  std::string out = score::printed(box.chord, {}) + " ";
  for (const auto& fret : box.shape.frets) out += fret ? std::to_string(*fret) : "x";
  out += " ";
  for (const int finger : box.shape.fingers) out += std::to_string(finger);
  out += " ";
  for (const bool root : box.roots) out += root ? "r" : "-";
  return out;
}

}  // namespace

TEST_CASE("a picture of the notes has each place once, in the key's degrees") {
  CHECK(neck(bass_in_d, "of = \"notes\"") == "0-5: 2/2=2 2/3=♭3 2/5=4 3/4=7 3/5=1!");
  CHECK(neck(bass_in_d, "of = \"notes\", labels = \"none\"") == "0-5: 2/2= 2/3= 2/5= 3/4= 3/5=!");
  // C♯ is no note of the key: it is spelled as the staff spells it.
  CHECK(neck(bass_in_d, "of = \"notes\", labels = \"notes\", frets = \"4-8\"") == "4-8: 2/5=G 3/4=C♯ 3/5=D!");
}

TEST_CASE("fingers are those written, a hand's position where none is, and none for what lies open") {
  CHECK(neck(bass_in_d, "of = \"notes\", labels = \"fingers\"") == "0-5: 2/2= 2/3=1 2/5=4 3/4=2 3/5=3!");
  const std::string plain = grid("count | 1 2 3 4 |\nG | 0     9 |\nD | 5   7   |\nA |   5     |\n");
  CHECK(neck(bass_in_d, "of = \"notes\", labels = \"fingers\"", plain) == "0-9: 1/0= 1/9=4 2/5=1 2/7=3 3/5=1!");
}

TEST_CASE("a picture of the key has its scale everywhere, one of a chord its tones") {
  // The notes of the bass's E string up to the fifth fret: E F G A; of the others likewise (reckoned from the tuning).
  CHECK(neck(bass_in_d, "of = \"key\", frets = \"0-3\", labels = \"notes\"") ==
        "0-3: 1/0=G 1/2=A 2/0=D! 2/2=E 2/3=F 3/0=A 3/2=B 3/3=C 4/0=E 4/1=F 4/3=G");
  CHECK(neck(bass_in_d, "of = \"chord IV7\", frets = \"1-3\"") == "1-3: 2/3=♭7 3/2=3 4/1=♭7 4/3=1!");
  CHECK(neck(bass_in_d, "of = \"chord Bb\", frets = \"0-3\", labels = \"notes\"") ==
        "0-3: 1/3=B♭! 2/0=D 2/3=F 3/1=B♭! 4/1=F");
}

TEST_CASE("a short string has no place before its own nut") {
  const std::string picture = neck("title = \"Slipway\"\ninstrument = \"banjo\"\nkey = \"G major\"\n",
                                   "of = \"key\", frets = \"0-7\"", grid("count | 1 |\nd | 0 |\n"));
  CHECK(picture.find(" 5/0=1!") != std::string::npos);
  CHECK(picture.find(" 5/7=2") != std::string::npos);
  for (const char* absent : {" 5/1=", " 5/2=", " 5/3=", " 5/4=", " 5/5="})
    CHECK(picture.find(absent) == std::string::npos);
}

TEST_CASE("frets are chosen to fit: from the nut where that is near, five at least") {
  const auto frets = [](const std::string& rows) {
    const std::string made = neck(bass_in_d, "of = \"notes\"", grid("count | 1  2  |\n" + rows));
    return made.substr(0, made.find(':'));
  };
  CHECK(frets("G | 1  2  |\n") == "0-5");
  CHECK(frets("G | 3  9  |\n") == "0-9");
  CHECK(frets("G | 4  5  |\n") == "4-8");
  CHECK(frets("G | 0  9  |\n") == "0-9");
  CHECK(frets("G | 22 23 |\n") == "20-24");
}

TEST_CASE("the picture's title names what it shows") {
  const auto title = [](const std::string& of, const std::string& language) {
    const Example built =
        example(bass_in_d + "language = \"" + language + "\"\n", "neck = { of = \"" + of + "\" }\n" + low_line);
    return built.neck->title;
  };
  CHECK(title("key", "en") == "D Dorian on the neck");
  CHECK(title("chord bVII", "en") == "C on the neck");
  CHECK(title("notes", "de") == "Diese Töne auf dem Griffbrett");
}

TEST_CASE("a chord box has the frets as given, else worked out, its roots told apart") {
  const auto boxes = [](const std::string& instrument, const std::string& shapes) {
    const Example built = example("title = \"Slipway\"\nkey = \"A minor\"\ninstrument = \"" + instrument + "\"\n",
                                  "shapes = [" + shapes + "]\n" + grid("count | 1 |\n"));
    std::string out;
    for (const score::ChordBox& box : built.boxes) out += (out.empty() ? "" : "; ") + shape(box);
    return out;
  };
  // The shapes that are worked out are common practice.
  CHECK(boxes("guitar", "\"i\", \"C\", \"F 133211\"") ==
        "Am x02210 002310 -r-r--; C x32010 032010 -r--r-; F 133211 134211 r-r--r");
  CHECK(boxes("ukulele", "\"C\", \"G7\"") == "C 0003 0003 -r-r; G7 0212 0213 r---");
}

TEST_CASE("a capo's box names the chord that sounds and the one that is fingered") {
  const Example built = example("title = \"Slipway\"\nkey = \"A minor\"\ninstrument = \"guitar\"\ncapo = 3\n",
                                "shapes = [\"Bb\"]\n" + grid("count | 1 |\n"));
  REQUIRE(built.boxes.size() == 1);
  CHECK(score::printed(built.boxes[0].chord, {}) == "B♭");
  REQUIRE(built.boxes[0].fingered);
  CHECK(score::printed(*built.boxes[0].fingered, {}) == "G");
  CHECK(shape(built.boxes[0]) == "B♭ 320003 210003 r--r-r");  // common practice: an open G
}

TEST_CASE("what no hand can hold is said at its place") {
  const auto said = [](const std::string& shapes) {
    const lesson::Lesson lesson = score::test::read("title = \"Slipway\"\nkey = \"A minor\"\ninstrument = \"bass\"\n",
                                                    "shapes = [" + shapes + "]\n" + grid("count | 1 |\nG | 0 |\n"));
    source::Diagnostics diagnostics;
    score::build_score(lesson, diagnostics);
    std::string out;
    for (const auto& one : diagnostics.list()) {
      out += (one.severity == source::Severity::error ? "error: " : "warning: ") + one.message + "; " + one.help;
      CHECK(one.range == lesson.examples[0].shapes[0].range);
    }
    return out;
  };
  CHECK(said("\"Am 1-5-9-14\"") ==
        "warning: four fingers cannot stop this shape; its box has no fingers; "
        "leave the frets out, and a shape is worked out");
  CHECK(said("\"Am\"") == "");
}

TEST_CASE("a form's chart has its chords in the key, the example's bars marked") {
  const Example built =
      example(bass_in_d, "form = { bars = \"|: i7 IV7,v7 % :| N.C. | bVII\", here = \"2-3\" }\n" + low_line);
  REQUIRE(built.form);
  std::string out;
  for (const score::FormCell& cell : built.form->bars) {
    out += cell.begins_line ? " / " : " ";
    if (cell.repeat_begin) out += "|:";
    for (const auto& chord : cell.chords) out += (chord ? score::printed(*chord, {}) : "N.C.") + ",";
    if (cell.same_as_previous) out += "%";
    if (cell.repeat_end) out += ":|";
    if (cell.here) out += "*";
  }
  CHECK(out == " / |:Dm7, G7,Am7,* G7,Am7,%:|* / N.C., / C,");
  CHECK(built.bars.size() == 2);  // it is not written out
}

TEST_CASE("a form written out has slashes under its chords and the music in its place") {
  const Example built =
      example(bass_in_d, "form = { bars = \"i7 IV7 | v7,i7 i7\", here = \"2-3\", write-out = true }\n" + low_line);
  CHECK(bars(built) == "1: Dm7@0 / / / / ||; 2: G7@0 |; 3: Am7@0 Dm7@1/2 ||; 4: Dm7@0 / / / / |.");
  CHECK(built.staves.front() == lesson::Staff::slash);
  CHECK(built.bars[1].events.front().notes.size() == 1);
}

TEST_CASE("written out, the music keeps its own chords, and what counts bars follows it") {
  const std::string music = grid(
      "count  | 1 2 3 4 :| 1 2 3 4 |\n"
      "chord  | F       |          |\n"
      "mark   | f       |  <------ |\n"
      "ending | 1.      |  2.      |\n"
      "A      | 5       |      3   |\n");
  const Example built =
      example(bass_in_d, "form = { bars = \"|: i7 | IV7 v7 :|\", here = \"2-3\", write-out = true }\n" + music);
  CHECK(bars(built) == "1: Dm7@0 / / / / ||; 2: F@0 :|; 3: :|");
  CHECK(built.left == lesson::BarSign::repeat_begin);
  CHECK(built.dynamics.at(0).moment.bar == 1);
  CHECK(built.spans.at(0).first.bar == 2);
  CHECK(built.spans.at(0).last.bar == 2);
  CHECK(built.endings.at(1).first_bar == 2);
}

TEST_CASE("a build-up calls bars as they are numbered in the written-out form") {
  const std::string music = grid("count | 1 2 3 4 | 1 2 3 4 |\nA     | 5       | 3       |\n");
  const Example built = example(
      bass_in_d, "build-up = \"bars\"\nform = { bars = \"i7 IV7 v7 i7\", here = \"3-4\", write-out = true }\n" + music);
  REQUIRE(built.build_up.size() == 3);
  CHECK((built.build_up[0].first == 3 && built.build_up[0].last == 3));
  CHECK((built.build_up[1].first == 4 && built.build_up[1].last == 4));
  CHECK(built.build_up[2].whole);
}

TEST_CASE("written out, a repeat still goes back to where the example starts, and says so") {
  const std::string music = grid("count | 1 2 3 4 :| 1 2 3 4 |\nA     | 5        | 3       |\n");
  const Example built =
      example(bass_in_d, "form = { bars = \"i7 IV7 v7 i7\", here = \"2-3\", write-out = true }\n" + music);
  CHECK(bars(built) == "1: Dm7@0 / / / / |:; 2: G7@0 :|; 3: Am7@0 ||; 4: Dm7@0 / / / / |.");
  const Example opened =
      example(bass_in_d, "form = { bars = \"|: i7 IV7 :| v7 i7\", here = \"2-3\", write-out = true }\n" + music);
  CHECK(bars(opened) == "1: Dm7@0 / / / / ||; 2: G7@0 :|; 3: Am7@0 ||; 4: Dm7@0 / / / / |.");
}

TEST_CASE("slashes stand on the beats of the meter") {
  const Example built =
      example(bass + "key = \"D dorian\"\nmeter = \"6/8\"\n",
              "form = { bars = \"i7 IV7\", here = \"2\", write-out = true }\n" + grid("count | 1 4 |\nA | 5 3 |\n"));
  CHECK(bars(built) == "1: Dm7@0 / / ||; 2: G7@0 |.");
  CHECK(built.bars[0].events[1].at == theory::Rational(3, 8));
  CHECK(built.bars[0].show_meter);
  CHECK_FALSE(built.bars[1].show_meter);
}

// What the lesson's key names means the same in every key: degrees stay, names go along.
TEST_CASE("pictures say the same degrees in all twelve keys") {
  std::string degrees;
  for (const theory::Key& key : theory::all_keys(theory::Mode::dorian)) {
    const Example built = example(bass + "key = \"" + key.to_string() + "\"\n",
                                  "neck = { of = \"chord i7\", frets = \"0-12\" }\n"
                                  "form = { bars = \"i7 IV7\" }\n" +
                                      low_line);
    CAPTURE(key.to_string());
    std::map<std::string, int> counts;
    for (const score::NeckMark& mark : built.neck->marks) {
      ++counts[mark.label];
      CHECK(mark.root == (mark.label == "1"));
      // The octave of an open string is the same tone again.
      if (mark.place.fret == 0) --counts[mark.label];
    }
    // Every tone lies once in twelve frets of each of four strings.
    CHECK(counts == std::map<std::string, int>{{"1", 4}, {"♭3", 4}, {"5", 4}, {"♭7", 4}});
    CHECK(built.form->bars[0].chords[0]->root == key.tonic);
  }
}
