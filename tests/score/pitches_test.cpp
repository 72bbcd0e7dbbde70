#include <catch2/catch.hpp>

#include "score/build.h"
#include "spell_out.h"

using namespace fretsheaf;
using score::test::bass_in_c;

namespace {

score::Example example(const std::string& lesson_keys, const std::string& rows) {
  return score::test::built(score::test::read(lesson_keys, score::test::grid(rows)));
}

std::string pitches(const score::Example& example) {
  std::string out;
  for (const score::Bar& bar : example.bars) {
    for (const score::Event& event : bar.events) {
      for (const score::Note& note : event.notes) out += (out.empty() ? "" : " ") + note.sounding.to_string();
    }
  }
  return out;
}

std::string in_key(std::string_view key) {
  return "title = \"Harbour wall\"\ninstrument = \"bass\"\nkey = \"" + std::string(key) + "\"\n";
}

}  // namespace

TEST_CASE("places sound as the neck says (common practice: A string 5th fret is D, D string 4th fret F sharp)") {
  CHECK(pitches(example(in_key("D major"), "count | 1 2 3 4 |\nD |   4 7   |\nA | 5     4 |\n")) == "D2 F#2 A2 C#2");
}

TEST_CASE("chromatic notes rise by sharps and fall by flats (Open Music Theory, chromaticSolfege)") {
  CHECK(pitches(example(bass_in_c, "count | 1 2 3 4 |\nA     | 3 4 5 6 |\n")) == "C2 C#2 D2 D#2");
  CHECK(pitches(example(bass_in_c, "count | 1 2 3 4 |\nA | 5 4 3 2 |\n")) == "D2 Db2 C2 B1");
  // Where the same note is struck again, what comes after it decides.
  CHECK(pitches(example(bass_in_c, "count | 1 2 3 4 |\nA | 3 4 4 5 |\n")) == "C2 C#2 C#2 D2");
}

TEST_CASE("F in G F F B in E minor is no E sharp, though a tritone follows") {
  CHECK(pitches(example(in_key("E minor"), "count | 1 2 3 4 |\nG     |       4 |\nD     | 5 3 3   |\n")) ==
        "G2 F2 F2 B2");
}

TEST_CASE("chord tones take the chord's letters") {
  CHECK(
      pitches(example(bass_in_c, "count | 1  2 3 4 |\nchord | E7       |\nD     | 2  6     |\nA     |      6 5 |\n")) ==
      "E2 G#2 Eb2 D2");
  CHECK(pitches(example(bass_in_c, "count | 1   2 3  4 |\nchord | Ebm        |\nA     | 6   9 13 9 |\n")) ==
        "Eb2 Gb2 Bb2 Gb2");
}

TEST_CASE("a spelling that is asked for wins, and goes on with the note") {
  const score::Example one = example(bass_in_c, "count | 1  2 | 1 2 |\nspell | Db   |     |\nA     | 4    | =   |\n");
  CHECK(pitches(one) == "Db2 Db2");
  CHECK(one.bars[0].events[0].notes[0].tie_to);
  CHECK(one.bars[1].events[0].notes[0].tie_from);
}

TEST_CASE("a spelling is idle only where it changes nothing wherever its note is played, a chord's only as a whole") {
  const auto idle = [](const std::string& rows, const std::string& more = "") {
    source::Diagnostics problems;
    const std::string example = "[[example]]\n" + score::test::grid(rows);
    score::build_score(score::test::read_whole(bass_in_c + example + more), problems);
    return problems.list().size();
  };
  CHECK(idle("count | 1 2 |\nspell | D   |\nA     | 5   |\n") == 1);
  // Said once for all bars, and not where one of them needs it: D flat leads down to C, and on to D it would be C
  // sharp.
  CHECK(idle("count | 1  2 | %  |\nspell | Db   |    |\nA     | 4  3 |    |\n") == 1);
  CHECK(idle("count | 1  2  | %  | 1 |\nspell |    Db |    |   |\nA     | 3  4  |    | 5 |\n") == 0);
  CHECK(idle("count | 1   2 |\nspell | D,A   |\nD     | 0     |\nA     | 0     |\n") == 1);
  CHECK(idle("count | 1     2 |\nspell | D,Bbb   |\nD     | 0       |\nA     | 0       |\n") == 0);
  // Over another chord in a variation.
  const std::string line = "count | 1 2  3 |\nspell |   Db   |\nA     | 3 4  3 |\n";
  const std::string variation = "[[example]]\nvary = 1\n" + score::test::grid("count | 1 2 & |\nchord | A7    |\n");
  CHECK(idle(line) == 1);
  CHECK(idle(line, variation) == 0);
}

TEST_CASE("octaves follow what sounds, also across the letter C") {
  CHECK(pitches(example(in_key("Cb major"), "count | 1 2 3 4 |\nA | 2 3   1 |\n")) == "Cb2 C2 Bb1");
  CHECK(pitches(example(in_key("C# major"), "count | 1 2 3 |\nA | 3 4 6 |\n")) == "B#1 C#2 D#2");
}

TEST_CASE("a harmonic sounds its partial (the 12th fret an octave, the 7th an octave and a fifth: common practice)") {
  const score::Example one = example(bass_in_c, "count | 1    2   3    |\nA | <12> <7> <5>  |\n");
  CHECK(pitches(one) == "A2 E3 A3");
  CHECK(one.bars[0].events[0].notes[0].head == score::HeadKind::harmonic);
  CHECK(one.bars[0].events[0].slash == score::HeadKind::harmonic);
}

TEST_CASE("a dead note has its open string's pitch, grace notes their own") {
  const score::Example one = example(bass_in_c, "count | 1   2   |\nA     | x 4h5   |\n");
  CHECK(pitches(one) == "A1 D2 D2");
  CHECK(one.bars[0].events[0].slash == score::HeadKind::dead);
  REQUIRE(one.bars[0].events[1].notes[0].graces.size() == 1);
  CHECK(one.bars[0].events[1].notes[0].graces[0].sounding.to_string() == "C#2");
  CHECK(one.bars[0].events[1].notes[0].approach == lesson::Approach::hammer_on);
}

TEST_CASE("with a capo everything sounds higher, and chords are named as fingered too") {
  const std::string capo = "title = \"Harbour wall\"\ninstrument = \"guitar\"\nkey = \"E major\"\n";
  const auto chords = [](const score::Example& example) {
    std::string out;
    for (const score::Bar& bar : example.bars) {
      for (const score::ChordMark& mark : bar.chords) {
        out += (out.empty() ? "" : " ") + (mark.chord ? to_string(*mark.chord) : "N.C.");
        if (mark.fingered) out += "(" + to_string(*mark.fingered) + ")";
      }
    }
    return out;
  };
  const std::string rows =
      "count | 1   2   3     4    | 1    |\nchord | I   vi7 G#/B# N.C. | bVII |\nA     | 0                  | 0    |\n";
  CHECK(chords(example(capo, rows)) == "E C#m7 G#/B# N.C. D");
  CHECK(chords(example(capo + "capo = 2\n", rows)) == "E(D) C#m7(Bm7) G#/B#(F#/A#) N.C. D(C)");
  CHECK(chords(example(capo + "capo = 4\n", rows)) == "E(C) C#m7(Am7) G#/B#(E/G#) N.C. D(Bb)");
  // E flat, not D sharp.
  CHECK(chords(example(capo + "capo = 1\n", rows)) == "E(Eb) C#m7(Cm7) G#/B#(G/B) N.C. D(Db)");
  CHECK(pitches(example(capo + "capo = 2\n", rows)) == "B2 B2");
  // Shapes have plain names, however far the key is: G minor, not F double sharp.
  const std::string flat = "title = \"Harbour wall\"\ninstrument = \"guitar\"\nkey = \"Db major\"\ncapo = 2\n";
  CHECK(chords(example(flat, "count | 1   2   3     |\nchord | Am7 IV  Baug7 |\nA     | 0             |\n")) ==
        "Am7(Gm7) Gb(E) Baug7(Aaug7)");
}

TEST_CASE("ties join the notes that go on, string by string, the slash only where all of them do") {
  const score::Example one = example(bass_in_c,
                                     "count | 1 2 4 | 1 2 |\n"
                                     "G     | 5 =   |     |\n"
                                     "D     | 5 7 = | =   |\n");
  const auto& events = one.bars[0].events;
  REQUIRE(events.size() == 3);
  CHECK(events[0].notes[0].tie_to);
  CHECK_FALSE(events[0].notes[1].tie_to);
  CHECK_FALSE(events[0].tie_to);  // the D string is struck anew
  CHECK(events[1].notes[0].tie_from);
  CHECK_FALSE(events[1].notes[1].tie_from);
  CHECK(events[1].struck);
  CHECK_FALSE(events[1].notes[0].tie_to);  // the G string ends
  CHECK(events[1].tie_to);                 // all of what follows is tied
  CHECK(events[2].tie_from);
  CHECK_FALSE(events[2].struck);
}

TEST_CASE("signs stand on the struck symbol, a fermata on the last") {
  const score::Example one = example(bass_in_c,
                                     "count  | 1       & 2       3 4 |\n"
                                     "mark   |         fermata       |\n"
                                     "stroke |         d             |\n"
                                     "A      | 3       5>~           |\n");
  const auto& events = one.bars[0].events;
  CHECK(score::test::text(one.bars[0]) == "8 8~ 4~ 2");
  CHECK(events[1].notes[0].accent);
  CHECK(events[1].notes[0].vibrato);
  CHECK(events[1].stroke == lesson::Stroke::down);
  CHECK_FALSE(events[1].fermata);
  CHECK_FALSE(events[2].notes[0].accent);
  CHECK_FALSE(events[2].stroke);
  CHECK(events[3].fermata);
}

TEST_CASE("strums have their heads, held ones tied slashes of the same head") {
  const score::Example one = example(bass_in_c, "count | 1 2 3 4   | 1 2 |\nplay  | * x > (*) |   * |\n");
  const auto& events = one.bars[0].events;
  CHECK(events[0].slash == score::HeadKind::normal);
  CHECK(events[1].slash == score::HeadKind::dead);
  CHECK(events[2].strum == lesson::Strum::accented);
  CHECK(events[3].slash == score::HeadKind::ghost);
  CHECK(events[3].tie_to);
  CHECK(one.bars[1].events[0].tie_from);
  CHECK(one.bars[1].events[0].slash == score::HeadKind::ghost);
  CHECK_FALSE(one.bars[1].events[0].strum);
  CHECK_FALSE(one.has_strings);
}
