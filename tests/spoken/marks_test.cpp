// What stands beside the notes, and how notes are played, in English sentence by sentence.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "spoken/sample.h"
#include "spoken/spoken.h"

namespace fretsheaf::spoken::test {
namespace {

std::vector<std::string> bars(const score::Score& score) {
  return alternatives(score).examples.at(0).bars;
}

// The one bar of an example of one bar.
std::string bar(const std::string& rows, const std::string& keys = "", const std::string& own = "") {
  return bars(example(rows, keys, own)).at(0);
}

}  // namespace

TEST_CASE("how a note is reached and left") {
  CHECK(bar("count |   1  2   3  4 |\nG     | 4h5 p4  /7 \\5 |\n") ==
        "Bar 1. Each lasts 1 beat. Beat 1: G string, grace note 4th fret, 5th fret, hammer-on. Beat 2: G string, 4th "
        "fret, pull-off. Beat 3: G string, 7th fret, slide up. Beat 4: G string, 5th fret, slide down.");
  CHECK(bar("count |  1  2     3 4  |\nG     | /5    3h5p3 7/ |\nD     |    \\7         |\n") ==
        "Bar 1. Each lasts 1 beat. Beat 1: G string, 5th fret, slide in from below. Beat 2: D string, 7th fret, slide "
        "in from above. Beat 3: G string, grace note 3rd fret, grace note 5th fret by hammer-on, 3rd fret, pull-off. "
        "Beat 4: G string, 7th fret, slide off upward.");
}

TEST_CASE("how a note sounds") {
  CHECK(bar("count | 1   2    3     4    |\nG     | (5) <12> 7^1/2 7^1v |\n") ==
        "Bar 1. Each lasts 1 beat. Beat 1: G string, 5th fret, ghost note. Beat 2: G string, 12th fret, harmonic. "
        "Beat 3: G string, 7th fret, bend up a half tone. Beat 4: G string, 7th fret, bend up 1 tone and release.");
  CHECK(bar("count | 1     2     3   4      |\nG     | 7^3/2 7^1/4 5.~ 5_>    |\n") ==
        "Bar 1. Each lasts 1 beat. Beat 1: G string, 7th fret, bend up a tone and a half. Beat 2: G string, 7th fret, "
        "bend up a quarter tone. Beat 3: G string, 5th fret, vibrato, staccato. Beat 4: G string, 5th fret, accent, "
        "tenuto.");
}

TEST_CASE("both hands, strokes and a fermata") {
  CHECK(bar("count  | 1  2  3  4       |\nmark   |          fermata |\nG      | 5  7  5  4       |\n"
            "finger | 1  3  0  T       |\nhand   | p  i  T  P       |\nstroke | d  u             |\n") ==
        "Bar 1. Each lasts 1 beat. Beat 1: G string, 5th fret, finger 1, plucked with the thumb, down stroke. Beat 2: "
        "G string, 7th fret, finger 3, plucked with the index finger, up stroke. Beat 3: G string, 5th fret, thumb "
        "slap. Beat 4: G string, 4th fret, fretting thumb, pop, fermata.");
}

TEST_CASE("labels that are printed are told") {
  CHECK(bar("count | 1   2   |\nchord | Bb7     |\nA     | 1   4   |\n", "meter = \"2/4\"\n",
            "labels = [\"notes\", \"chord-degrees\", \"key-degrees\"]\n") ==
        "Bar 1, chord B flat 7. Each lasts 1 beat. Beat 1: A string, 1st fret, degree 1 in the chord, degree flat 6 in "
        "the key, note B flat. Beat 2: A string, 4th fret, degree sharp 2 in the chord, degree 7 in the key, note C "
        "sharp.");
}

TEST_CASE("ties are one note, told again as held where a bar begins or something else starts") {
  const auto said =
      bars(example("count | 1  2 3 4 | 1 2 3 4 | 1 2 3 4 |\n"
                   "G     |      5   | =   = 7 |       3 |\n"
                   "D     | 7        |     5   | 5   =   |\n"
                   "A     |          |         | 3   3   |\n"));
  REQUIRE(said.size() == 3);
  CHECK(said[0] == "Bar 1. Beat 1: D string, 7th fret, 2 beats. Beat 3: G string, 5th fret, 5 beats.");
  CHECK(said[1] ==
        "Bar 2. Beat 1: G string, 5th fret, still held. Beat 3, together: D string, 5th fret; G string, still held; 1 "
        "beat. Beat 4: G string, 7th fret, 1 beat.");
  CHECK(said[2] ==
        "Bar 3. Beat 1, together: A string, 3rd fret, 2 beats; D string, 5th fret, 3 beats. Beat 3, together: A "
        "string, 3rd fret; D string, still held; 1 beat. Beat 4: G string, 3rd fret, 1 beat.");
}

TEST_CASE("repeats, endings, sections and the signs of the way") {
  const auto said =
      bars(score_of("title = \"Tide\"\nkey = \"D minor\"\ninstrument = \"bass\"\nmeter = \"2/4\"\n"
                    "[[example]]\ntab = '''\n"
                    "count   |: 1  2 | 1   2 :| 1    2 || 1  2  |\n"
                    "section |  A    |        |        |  B     |\n"
                    "ending  |       | 1.     | 2.     |        |\n"
                    "road    |       | 3x     |        |        |\n"
                    "G       |  5  7 | 4   4  | 5    5 |  2  2  |\n'''\n"));
  REQUIRE(said.size() == 4);
  CHECK(said[0].starts_with("Bar 1, a repeat begins here, section “A”. "));
  CHECK(said[1].starts_with("Bar 2, ending 1. "));
  CHECK(said[1].ends_with(" Repeat from bar 1, 3 times in all."));
  CHECK(said[2].starts_with("Bar 3, ending 2. "));
  CHECK(said[2].ends_with(" Double bar line."));
  CHECK(said[3].starts_with("Bar 4, section “B”. "));
  const auto way =
      bars(example("count | 1  2 | 1  2 | 1  2 | 1  2 |\n"
                   "road  | segno | \"To Coda\"  | \"D.S. al Coda\" | coda |\n"
                   "G     | 5  7 | 4  4 | 5  5 | 2  2 |\n",
                   "meter = \"2/4\"\n"));
  REQUIRE(way.size() == 4);
  CHECK(way[0].starts_with("Bar 1, segno. "));
  CHECK(way[1].ends_with(" To Coda."));
  CHECK(way[2].ends_with(" Dal segno al Coda."));
  CHECK(way[3].starts_with("Bar 4, coda. "));
}

TEST_CASE("pickups, late bars and meters") {
  const auto said =
      bars(example("count | 4 & | 1 2 3 4 | 1 2 3 | 1   |\n"
                   "meter |     |         | 3/4   |     |\n"
                   "G     |   5 | 7 5 7 5 | 2 4 5 | 7   |\n"));
  REQUIRE(said.size() == 4);
  CHECK(said[0] == "Pickup bar. Beat 4 and: G string, 5th fret, half a beat.");
  CHECK(said[2].starts_with("Bar 2, meter 3/4, 3 beats a bar, in quarter notes. Each lasts 1 beat. "));
  CHECK(said[3] == "Bar 3. Beat 1: G string, 7th fret, 3 beats.");
}

TEST_CASE("loudness, spans, words and syllables stand at their beats") {
  const auto said =
      bars(example("count | 1     2 3  4 | 1 2 3   4    | 1    2 3 4 |\n"
                   "mark  | p       <------|--------------| ff         |\n"
                   "mark  |              |   PM-        |      let- |\n"
                   "G     | 5     5 5  5 | 7 7 7   5    | 5    5 5 5 |\n"
                   "lyric | sea-  weed   |              |            |\n"
                   "lyric | o-    ver    |              |            |\n"
                   "text  |              |     \"slow.; down\"|            |\n"));
  REQUIRE(said.size() == 3);
  CHECK(said[0] ==
        "Bar 1, piano. Each lasts 1 beat. Beat 1: G string, 5th fret, sung “sea-”, verse 2 “o-”. Beat 2: G string, 5th "
        "fret, sung “weed”, verse 2 “ver”. Beat 3, getting louder until beat 4 of bar 2: G string, 5th fret. Beat 4: G "
        "string, 5th fret.");
  CHECK(said[1] ==
        "Bar 2. Each lasts 1 beat. Beat 1: G string, 7th fret. Beat 2, palm mute until beat 3: G string, 7th fret. "
        "Beat 3: G "
        "string, 7th fret, marked “slow.; down”. Beat 4: G string, 5th fret.");
  CHECK(said[2].starts_with("Bar 3, fortissimo. "));
  CHECK(said[2].find("Beat 2, let ring until beat 3: ") != std::string::npos);
}

TEST_CASE("a chord between two notes has a sentence of its own") {
  CHECK(bar("count | 1 2 3 4 |\nchord | C   N.C.|\nG     | 5       |\n") ==
        "Bar 1, chord C major. Beat 1: G string, 5th fret, 4 beats. Beat 3, no chord.");
}

TEST_CASE("strums are told by what they are") {
  CHECK(bar("count  | 1 & 2 3 4  & |\nplay   | * > x   (*)  |\nstroke | d u d   u    |\n") ==
        "Bar 1. Beat 1: strum, half a beat, down stroke. Beat 1 and: accented strum, half a beat, up stroke. Beat 2: "
        "muted strum, 2 beats, down stroke. Beat 4: ghost strum, 1 beat, up stroke.");
}

TEST_CASE("a capo is told at the beginning, and with every chord the one that is held") {
  const score::Score score = example("count | 1 2 |\nchord | F#  |\nG     | 2 2 |\n", "capo = 2\nmeter = \"2/4\"\n");
  CHECK(alternatives(score).examples.at(0).opening ==
        "Meter 2/4, 2 beats a bar, in quarter notes. Frets are counted from the capo.");
  CHECK(bars(score).at(0).starts_with("Bar 1, chord F sharp major, fingered as E major. "));
}

TEST_CASE("what holds for an example is told before it") {
  const std::string rows = "count | 1 2 3 |\nG     | 2 2 2 |\n";
  const auto opening = [&](const std::string& own) {
    return alternatives(example(rows, "meter = \"3/8\"\nkey = \"C major\"\n", own)).examples.at(0).opening;
  };
  CHECK(opening("") == "Meter 3/8, 3 beats a bar, in eighth notes.");
  CHECK(opening("feel = \"swing\"\ntempo = 92\n") ==
        "Meter 3/8, 3 beats a bar, in eighth notes. Swing. Tempo 92 eighth notes a minute.");
  CHECK(opening("key = \"Eb major\"\ntempo = [80, 100]\n") ==
        "Key E flat major. Meter 3/8, 3 beats a bar, in eighth notes. Tempo 80, and then 100 eighth notes a minute.");
  CHECK(opening("tempo = { from = 60, to = 90, step = 10, beat = \"dotted quarter\" }\n") ==
        "Meter 3/8, 3 beats a bar, in eighth notes. Tempo from 60 up to 90 dotted quarter notes a minute.");
}

}  // namespace fretsheaf::spoken::test
