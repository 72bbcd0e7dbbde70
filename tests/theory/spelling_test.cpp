#include "theory/spelling.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <string>
#include <vector>

#include "names.h"
#include "theory/arithmetic.h"
#include "theory/interval.h"
#include "theory/keys.h"

using namespace fretsheaf::theory;
using namespace fretsheaf::theory::testing;

namespace {

// A line's notes spelled one after another, each knowing its neighbours.
std::vector<NoteName> spelled(const std::vector<int>& line, const Key& key, const std::optional<Chord>& chord = {}) {
  std::vector<NoteName> names;
  for (std::size_t index = 0; index < line.size(); ++index) {
    SpellingContext context{key, chord, {}, {}};
    if (index + 1 < line.size()) context.next_midi = line[index + 1];
    if (index > 0) context.previous_midi = line[index - 1];
    names.push_back(spell(line[index], context));
  }
  return names;
}

std::string degrees(const std::vector<NoteName>& names, const Key& key) {
  std::string text;
  for (const NoteName& name : names) text += (text.empty() ? "" : " ") + degree_of(key, name).to_string();
  return text;
}

// The chromatic scale over an octave from the tonic, up or down.
std::vector<int> chromatic(const Key& key, int direction) {
  std::vector<int> line;
  const int tonic = 60 + key.tonic.pitch_class();
  for (int semitones = 0; semitones <= 12; ++semitones) line.push_back(tonic + direction * semitones);
  return line;
}

std::string spelled_in(const char* key_text, const std::vector<int>& line, const char* chord_text = nullptr) {
  const std::optional<Chord> in_force = chord_text != nullptr ? std::optional(chord(chord_text)) : std::nullopt;
  return joined(spelled(line, key(key_text), in_force));
}

}  // namespace

TEST_CASE("Chromatic scales are spelled by direction, in all major keys") {
  // Open Music Theory, chromaticSolfege: up fi, si, li …; down te, le, se …
  for (int signs = -7; signs <= 7; ++signs) {
    const Key each{note_name_from_fifths(signs), Mode::major};
    CAPTURE(each.to_string());
    CHECK(degrees(spelled(chromatic(each, 1), each), each) == "1 #1 2 #2 3 4 #4 5 #5 6 #6 7 1");
    CHECK(degrees(spelled(chromatic(each, -1), each), each) == "1 7 b7 6 b6 5 b5 4 3 b3 2 b2 1");
  }
}

TEST_CASE("Chromatic scales are spelled by direction, in all minor keys") {
  // Open Music Theory, chromaticSolfege, for the way up; down: the natural seventh and sixth as there, b5 and b2 as a
  // semitone approach takes the neighbouring letter.
  for (int signs = -7; signs <= 7; ++signs) {
    const Key each{note_name_from_fifths(signs + 3), Mode::minor};
    CAPTURE(each.to_string());
    REQUIRE(has_signature(each));
    CHECK(degrees(spelled(chromatic(each, 1), each), each) == "1 #1 2 b3 3 4 #4 5 b6 6 b7 7 1");
    CHECK(degrees(spelled(chromatic(each, -1), each), each) == "1 7 b7 6 b6 5 b5 4 3 b3 2 b2 1");
  }
}

TEST_CASE("In every mode scale notes are the key's and every spelling sounds right") {
  for (const Mode mode :
       {Mode::major, Mode::minor, Mode::dorian, Mode::phrygian, Mode::lydian, Mode::mixolydian, Mode::locrian}) {
    for (int fifths = -12; fifths <= 12; ++fifths) {
      const Key each{note_name_from_fifths(fifths), mode};
      if (!has_signature(each)) continue;
      for (int midi = 40; midi < 64; ++midi) {
        for (int next = midi - 7; next <= midi + 7; ++next) {
          const NoteName name = spell(midi, {each, {}, next, {}});
          CHECK(name.pitch_class() == midi % 12);
          CHECK(std::abs(name.alteration) <= 2);
        }
      }
      for (const NoteName& note : each.scale()) CHECK(spell(60 + note.pitch_class(), {each, {}, {}, {}}) == note);
    }
  }
}

TEST_CASE("A note of the chord in force takes its letter") {
  // The rule is the trade's; the chords' tones are checked with the library tonal.
  CHECK(spelled_in("C major", {60, 63, 66, 69}, "Cdim7") == "C Eb Gb Bbb");
  CHECK(spelled_in("A minor", {64, 68, 71, 74}, "E7") == "E G# B D");
  CHECK(spelled_in("Gb major", {59, 63, 66, 69}, "Cb7") == "Cb Eb Gb Bbb");
  CHECK(spelled_in("D dorian", {58, 62, 65, 68}, "Bb7") == "Bb D F Ab");
  CHECK(spelled_in("C major", {68, 71, 74, 64}, "E7") == "G# B D E");
  CHECK(spelled_in("C major", {66, 69}, "D/F#") == "F# A");
  CHECK(spelled_in("C major", {63, 67}, "Cm/Eb") == "Eb G");
  CHECK(spelled_in("C major", {61}, "A7/C#") == "C#");
  CHECK(spelled_in("C major", {61}, "Gm/Db") == "Db");  // a bass that is no chord tone
}

TEST_CASE("A chord's tone may need three signs, and is printed by its practical name") {
  const NoteName name = spell(68, {key("Cb major"), chord("Cbdim7"), {}, {}});
  CHECK(name.to_string() == "Bbbb");
  CHECK(practical(name).to_string() == "Ab");
}

TEST_CASE("A line has the same names in every key, moved along the line of fifths") {
  const std::vector<int> line = {60, 61, 62, 66, 67, 70, 69, 63, 65, 68, 64, 71, 73, 60};
  const Key home = key("C major");
  for (const char* symbol : {"C7", "Cdim7", "Abmaj7", "E7#9", "Db/F"}) {
    const std::vector<NoteName> names = spelled(line, home, chord(symbol));
    for (int fifths = -7; fifths <= 7; ++fifths) {
      std::vector<int> moved = line;
      for (int& midi : moved) midi += floor_mod(7 * fifths, 12);
      Chord there = chord(symbol);
      there.root = shifted(there.root, fifths);
      if (there.bass) there.bass = shifted(*there.bass, fifths);
      const std::vector<NoteName> found = spelled(moved, {shifted(home.tonic, fifths), Mode::major}, there);
      for (std::size_t i = 0; i < line.size(); ++i) {
        CAPTURE(symbol, fifths, i);
        CHECK(found[i] == shifted(names[i], fifths));
      }
    }
  }
}

TEST_CASE("A semitone approach takes the neighbouring letter") {
  CHECK(spelled_in("C major", {61, 62}) == "C# D");
  CHECK(spelled_in("C major", {63, 62}) == "Eb D");
  CHECK(spelled_in("C major", {66, 67}) == "F# G");
  CHECK(spelled_in("C major", {66, 65}) == "Gb F");
  CHECK(spelled_in("C major", {70, 69}) == "Bb A");
  CHECK(spelled_in("C major", {70, 71}) == "A# B");
  CHECK(spelled_in("A minor", {68, 69}) == "G# A");
  CHECK(spelled_in("A minor", {75, 74}) == "Eb D");
  CHECK(spelled_in("Eb major", {66, 67}) == "F# G");
  CHECK(spelled_in("D dorian", {61, 62}) == "C# D");
}

TEST_CASE("#4 is preferred to b5 but where it falls a semitone") {
  CHECK(spelled_in("C major", {66, 69}) == "F# A");
  CHECK(spelled_in("C major", {66, 62}) == "F# D");
  CHECK(spelled_in("C major", {66}) == "F#");
  CHECK(spelled_in("A minor", {75}) == "D#");
}

TEST_CASE("A leap makes no odd interval") {
  // Common practice: a blue third is a flat, however the line goes on.
  CHECK(spelled_in("C major", {63, 65}) == "Eb F");
  CHECK(spelled_in("C major", {63, 67}) == "Eb G");
  CHECK(spelled_in("C major", {63, 60}) == "Eb C");
  CHECK(spelled_in("C major", {70, 72}) == "Bb C");
  CHECK(spelled_in("C major", {70, 67}) == "Bb G");
  CHECK(spelled_in("C major", {68, 71}) == "G# B");
  CHECK(spelled_in("C major", {61, 64}) == "C# E");
}

TEST_CASE("Two chromatic notes in a row go by direction") {
  CHECK(spelled_in("C major", {61, 63, 62}) == "C# Eb D");
  CHECK(spelled_in("C major", {63, 61, 62}) == "Eb C# D");
}

TEST_CASE("a rising leap from one chromatic note to another is no sharp: C over G in A mixolydian is no B sharp") {
  const auto names = [](const std::vector<int>& line, const std::string& of_key, const std::string& of_chord) {
    std::string text;
    for (const NoteName& name : spelled(line, key(of_key), chord(of_chord))) text += name.to_string() + " ";
    return text;
  };
  CHECK(names({36, 41}, "A mixolydian", "G") == "C F ");
  CHECK(names({41, 43}, "A major", "D7") == "F G ");
  CHECK(names({36, 41}, "A major", "A7") == "C F ");
}

TEST_CASE("A tritone is no direction: C before F sharp over G in D major is no B sharp") {
  CHECK(spelled_in("D major", {48, 54}, "G") == "C F#");
  CHECK(spelled_in("D major", {48, 54}) == "C F#");
  CHECK(spelled_in("D major", {60, 54}, "G") == "C F#");
  // The others of C major: #1 b3 #4 b6 b7 up to and down to the scale note half an octave off.
  CHECK(spelled_in("C major", {61, 67}) == "C# G");
  CHECK(spelled_in("C major", {61, 55}) == "C# G");
  CHECK(spelled_in("C major", {63, 69}) == "Eb A");
  CHECK(spelled_in("C major", {66, 60}) == "F# C");
  CHECK(spelled_in("C major", {66, 72}) == "F# C");
  CHECK(spelled_in("C major", {68, 74}) == "Ab D");
  CHECK(spelled_in("C major", {70, 76}) == "Bb E");
  CHECK(spelled_in("C major", {70, 64}) == "Bb E");
}

TEST_CASE("Before a tritone the note that comes before decides: F in G F F B in E minor is no E sharp") {
  CHECK(spelled_in("E minor", {67, 65, 71}) == "G F B");
  CHECK(spelled_in("E minor", {64, 65, 71}) == "E F B");
  CHECK(spelled_in("E minor", {66, 65, 71}) == "F# F B");
  CHECK(spelled_in("C major", {64, 61, 67}) == "E C# G");
  CHECK(spelled_in("C major", {65, 61, 67}) == "F Db G");
  CHECK(spelled_in("C major", {57, 63, 69}) == "A Eb A");  // a tritone on either side
}

TEST_CASE("In a key with a minor third what lies over the tonic is its flat second where nothing else decides") {
  // The harmonic chromatic scale of the handbooks: b2 b3 #4 b6 b7 (common practice); the Phrygian second.
  CHECK(spelled_in("E minor", {65}) == "F");
  CHECK(spelled_in("E minor", {65, 71}) == "F B");
  CHECK(spelled_in("E minor", {64, 65}) == "E F");
  CHECK(spelled_in("E minor", {70}) == "A#");
  CHECK(spelled_in("D dorian", {63}) == "Eb");
  CHECK(spelled_in("D dorian", {68}) == "G#");
  CHECK(spelled_in("E minor", {64, 65, 66}) == "E E# F#");  // rising to the second it is raised
  CHECK(spelled_in("C major", {61}) == "C#");
}

TEST_CASE("Where nothing follows") {
  CHECK(spelled_in("C major", {60, 61}) == "C C#");
  CHECK(spelled_in("C major", {62, 61}) == "D Db");
  CHECK(spelled_in("C major", {60, 63}) == "C Eb");
  CHECK(spelled_in("C major", {60, 70}) == "C Bb");
  CHECK(spelled_in("C major", {61}) == "C#");
  CHECK(spelled_in("C major", {68}) == "Ab");
}

TEST_CASE("A note of the same pitch after it decides nothing") {
  const Key c_major = key("C major");
  CHECK(spell(63, {c_major, {}, 63, {}}) == spell(63, {c_major, {}, {}, {}}));
}

TEST_CASE("A minor key's raised sixth and seventh are naturals of its major scale") {
  CHECK(spelled_in("C minor", {67, 69, 71, 72}) == "G A B C");
  CHECK(spelled_in("C minor", {72, 71, 70}) == "C B Bb");
  CHECK(spelled_in("G# minor", {66, 67, 68}) == "F# F## G#");
  CHECK(spelled_in("F# minor", {63, 65, 66}) == "D# E# F#");
}
