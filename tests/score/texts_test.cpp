#include <catch2/catch.hpp>

#include "score/build.h"
#include "score/heading.h"
#include "score/printed.h"
#include "spell_out.h"

using namespace fretsheaf;
using score::plain;
using score::Rational;

namespace {

score::Score built(const lesson::Lesson& lesson) {
  source::Diagnostics diagnostics;
  score::Score score = score::build_score(lesson, diagnostics);
  CHECK(diagnostics.list().empty());
  return score;
}

// A practice note of the low example, in a bass lesson with these further keys.
std::string filled(const std::string& note, const std::string& lesson_keys) {
  const std::string example = "tempo = { from = 60, to = 108, step = 12 }\npractice = ['" + note + "']\n" +
                              score::test::grid(
                                  "count | 1 2 3 4   | 1 |\n"
                                  "chord | i         |   |\n"
                                  "G     |       12  |   |\n"
                                  "D     | 5 8       | 0 |\n"
                                  "A     | 5   x     |   |\n");
  const score::Score score =
      built(score::test::read("title = \"Slipway\"\ninstrument = \"bass\"\n" + lesson_keys, example));
  return plain(score.examples.front().practice.front().front().runs);
}

const std::string d_minor = "key = \"D minor\"\n";

}  // namespace

TEST_CASE("placeholders are filled in for the key and the music, accidentals as characters") {
  CHECK(filled("{{key}}", d_minor) == "D minor");
  CHECK(filled("{{key}}", "key = \"Bb lydian\"\n") == "B♭ Lydian");
  CHECK(filled("{{degree b6}} and {{degree 3}}", d_minor) == "B♭ and F♯");
  CHECK(filled("{{chord V7}}, {{chord bVI}}, {{chord ii7b5}}, {{chord F/A}}, {{chord N.C.}}", d_minor) ==
        "A7, B♭, Em7♭5, F/A, N.C.");
  CHECK(filled("{{note 1.1}} {{note 1.2}} {{note 2.1}}", d_minor) == "D B♭ D");  // a chord by its lowest note
  CHECK(filled("{{place 1.1}}", d_minor) == "A string, 5th fret");
  CHECK(filled("{{place 1.3}}; {{place 2.1}}", d_minor) == "A string; D string, open");
  CHECK(filled("{{place 1.4}}", d_minor + "language = \"de\"\n") == "G-Saite, 12. Bund");
  CHECK(filled("{{key}}", d_minor + "language = \"de\"\n") == "d-Moll");
  CHECK(filled("from {{tempo first}} to {{tempo last}}", d_minor) == "from 60 to 108");
  CHECK(filled("a {single} brace", d_minor) == "a {single} brace");
  CHECK(filled("*{{note 1.1}}*", d_minor) == "D");
}

TEST_CASE("where two strings share a letter a place is named by the string's number") {
  const auto place = [](const std::string& which, const std::string& language) {
    const score::Score score = built(score::test::read(
        "title = \"Slipway\"\ninstrument = \"guitar\"\nkey = \"C major\"\nlanguage = \"" + language + "\"\n",
        "intro = \"{{place " + which + "}}\"\n" +
            score::test::grid("count | 1 2 3 4 |\ne     | 3       |\nA     |     0   |\nE     |   1   x |\n")));
    return plain(score.examples.front().intro.front().runs);
  };
  CHECK(place("1.1", "en") == "1st string, 3rd fret");
  CHECK(place("1.2", "en") == "6th string, 1st fret");
  CHECK(place("1.3", "en") == "A string, open");
  CHECK(place("1.4", "en") == "6th string");
  CHECK(place("1.4", "de") == "6. Saite");
}

TEST_CASE("text rows are filled in too, in their own example's key") {
  const score::Score score = built(score::test::read(
      "title = \"{{key}} *study*\"\nsubtitle = \"2. on {{degree 1}}\"\ninstrument = \"bass\"\nkey = \"D minor\"\n",
      "key = \"Eb minor\"\ntitle = \"In {{key}}\"\nintro = \"- {{degree b3}}\"\n" +
          score::test::grid(
              "count | 1                  |\ntext  | \"to {{degree 1}}\"  |\nA     | 6                  |\n")));
  CHECK(score.title == "D minor study");
  CHECK(plain(score.heading.subtitle) == "2. on D");
  const score::Example& example = score.examples.front();
  CHECK(plain(example.title) == "In E♭ minor");
  CHECK(example.intro ==
        score::Blocks{
            {score::Block::Kind::list_item, 0, {}, {{"G♭", false, false, false, {}}}, {score::Container::list}, 1}});
  REQUIRE(example.bars[0].texts.size() == 1);
  CHECK(example.bars[0].texts[0].text == "to E♭");
}

TEST_CASE("the title block's facts") {
  const auto facts = [](const std::string& keys) {
    const score::Score score =
        built(score::test::read("title = \"Slipway\"\n" + keys, score::test::grid("count | 1 |\n")));
    std::string out;
    for (const score::Fact& fact : score.heading.facts) out += fact.label + ": " + plain(fact.value) + "; ";
    return out;
  };
  CHECK(facts("instrument = \"bass\"\nkey = \"D dorian\"\n") == "Key: D Dorian; Meter: 4/4; Tuning: E A D G; ");
  CHECK(facts("instrument = \"guitar\"\nkey = \"Bb major\"\ncapo = 3\nmeter = \"2+2+3/8\"\n") ==
        "Key: B♭ major; Meter: 2+2+3/8; Tuning: E A D G B E; Capo: fret 3; Fingered in: G major; ");
  CHECK(facts("instrument = \"bass\"\nkey = \"A minor\"\ntuning = [\"Eb1\", \"Ab1\", \"Db2\", \"Gb2\"]\n") ==
        "Key: A minor; Meter: 4/4; Tuning: E♭ A♭ D♭ G♭; ");
}

TEST_CASE("the heading and what belongs to the lesson") {
  const score::Score score =
      built(score::test::read("title = \"Slipway\"\nseries = \"Tuesday bass class\"\nnumber = 7\nlevel = \"early\"\n"
                              "teacher = \"Eelgrass Strings\"\ncopyright = \"© Eelgrass Strings\"\nname-line = true\n"
                              "link = \"https://eelgrass.example/7\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n"
                              "practice = [\"Rest *often*.\"]\npaper = \"letter\"\n",
                              score::test::grid("count | 1 |\nE     | 1 |\n")));
  CHECK(score.heading.series == "Tuesday bass class");
  CHECK(score.heading.number == "No. 7");
  CHECK(score.heading.level == "early");
  CHECK(score.heading.name_line);
  CHECK(score.heading.link == "https://eelgrass.example/7");
  CHECK(score.teacher == "Eelgrass Strings");
  CHECK(score.copyright == "© Eelgrass Strings");
  CHECK(score.paper == lesson::Paper::letter);
  CHECK(score.practice.size() == 1);
  CHECK(score.string_letters == std::vector<std::string>{"G", "D", "A", "E"});
  CHECK(score.clef == fretboard::Clef::bass);
  CHECK(score.sounds_octave_lower);
  CHECK(score.instrument == "bass");
}

TEST_CASE("tempo marks count the meter's own beat, ladders their rungs") {
  const auto example = [](const std::string& keys) {
    return built(score::test::read(score::test::bass_in_c, keys + score::test::grid("count | 1 |\nE     | 1 |\n")))
        .examples.front();
  };
  const score::Example plain_tempo = example("tempo = 92\n");
  REQUIRE(plain_tempo.tempo);
  CHECK(plain_tempo.tempo->tempo == 92);
  CHECK(plain_tempo.tempo->last == 92);
  CHECK(plain_tempo.tempo->beat == score::NoteValue{2, 0});
  CHECK_FALSE(plain_tempo.ladder);
  CHECK_FALSE(plain_tempo.show_feel);
  const score::Example compound = example("meter = \"12/8\"\ntempo = { from = 60, to = 108, step = 12, passes = 3 }\n");
  CHECK(compound.tempo->beat == score::NoteValue{2, 1});
  CHECK(compound.tempo->beat_length == Rational(3, 8));
  CHECK(compound.tempo->last == 108);
  REQUIRE(compound.ladder);
  CHECK(compound.ladder->rungs == std::vector<int>{60, 72, 84, 96, 108});
  CHECK(compound.ladder->passes == 3);
  CHECK(example("meter = \"2/2\"\ntempo = 60\n").tempo->beat == score::NoteValue{1, 0});
  CHECK(example("tempo = { from = 60, to = 80, rungs = 3, beat = \"dotted quarter\" }\n").tempo->beat ==
        score::NoteValue{2, 1});
  const score::Example pair = example("tempo = [80, 100]\n");
  CHECK(pair.tempo->pair);
  CHECK(pair.tempo->last == 100);
  CHECK_FALSE(pair.ladder);
  CHECK(example("feel = \"swing\"\n").show_feel);
  CHECK_FALSE(example("").tempo);
}

TEST_CASE("a straight example of a swung lesson says so") {
  const auto shown = [](const std::string& keys) {
    return built(score::test::read(score::test::bass_in_c + "feel = \"swing\"\n",
                                   keys + score::test::grid("count | 1 |\nE     | 1 |\n")))
        .examples.front()
        .show_feel;
  };
  CHECK(shown("feel = \"straight\"\n"));
  CHECK(shown(""));
}

TEST_CASE("meters show where they are new, and bars keep what stands at their ends") {
  const score::Example example = score::test::built(score::test::read(
      score::test::bass_in_c, score::test::grid("count | 4 |: 1 2 3 | 1 2 | 1   | 1   | % | 1  :|\n"
                                                "meter |   |        | 2/4 | 4/4 |     |   |     |\n"
                                                "road  |   |        |     |     |     |   | 3x  |\n"
                                                "E     | 1 |  1   3 | 3   | 1   | 1   |   | 1   |\n")));
  std::string shown;
  for (const score::Bar& bar : example.bars) shown += bar.show_meter ? 'm' : '-';
  CHECK(shown == "m-mm---");
  CHECK(example.bars[0].number == 0);
  CHECK(example.bars[0].right == lesson::BarSign::repeat_begin);
  CHECK(example.bars[5].same_as_previous);
  CHECK(example.bars[5].events.size() == example.bars[4].events.size());
  CHECK(example.bars[6].plays == 3);
  CHECK(example.bars[6].right == lesson::BarSign::repeat_end);
}
