#include "theory/pitch.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace fretsheaf::theory;

namespace {

NoteName name(const char* text) {
  return parse_note_name(text).value();
}
Pitch pitch(const char* text) {
  return parse_pitch(text).value();
}

}  // namespace

TEST_CASE("Note names are a letter and up to two like accidentals") {
  CHECK(name("Bb") == NoteName{Letter::B, -1});
  CHECK(name("f#") == NoteName{Letter::F, 1});
  CHECK(name("b") == NoteName{Letter::B, 0});
  CHECK(name("bb") == NoteName{Letter::B, -1});
  CHECK(name("C##").alteration == 2);
  CHECK(name("Ebb").to_string() == "Ebb");
  for (const char* wrong : {"", "H", "C###", "Cbbb", "C#b", "Cb#", "#", " C", "C ", "Cx", "do"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_note_name(wrong));
  }
}

TEST_CASE("Every name of up to two accidentals reads back as written") {
  for (int fifths = -15; fifths <= 19; ++fifths) {
    const NoteName note = note_name_from_fifths(fifths);
    CAPTURE(note.to_string());
    CHECK(note.fifths() == fifths);
    CHECK(parse_note_name(note.to_string()) == note);
    CHECK(note.pitch_class() == ((fifths * 7) % 12 + 12) % 12);  // a fifth is seven semitones
  }
  CHECK(note_name_from_fifths(-15).to_string() == "Fbb");
  CHECK(note_name_from_fifths(19).to_string() == "B##");
}

TEST_CASE("The line of fifths names the tonics of the major keys") {
  // Common practice: the circle of fifths, from seven flats to seven sharps.
  const std::vector<std::string> tonics = {"Cb", "Gb", "Db", "Ab", "Eb", "Bb", "F", "C",
                                           "G",  "D",  "A",  "E",  "B",  "F#", "C#"};
  for (int signs = -7; signs <= 7; ++signs) {
    CHECK(note_name_from_fifths(signs).to_string() == tonics[static_cast<std::size_t>(signs + 7)]);
  }
}

TEST_CASE("Past a double accidental the practical name sounds the same") {
  CHECK(practical({Letter::B, -3}).to_string() == "Ab");
  CHECK(practical({Letter::A, 3}).to_string() == "B#");
  CHECK(practical(name("F##")) == name("F##"));
  CHECK(practical(name("Ebb")) == name("Ebb"));
  for (const int alteration : {-6, -5, -4, -3, 3, 4, 5, 6}) {
    for (int letter = 0; letter < 7; ++letter) {
      const NoteName far{static_cast<Letter>(letter), alteration};
      CHECK(practical(far).pitch_class() == far.pitch_class());
      CHECK(std::abs(practical(far).alteration) <= 2);
    }
  }
}

TEST_CASE("MIDI counts semitones with middle C as 60") {
  // MIDI numbers of the open strings: common practice (MIDI 1.0: middle C is 60).
  const std::vector<std::pair<const char*, int>> numbers = {
      {"C4", 60}, {"A4", 69}, {"B0", 23}, {"E1", 28},  {"A1", 33},  {"D2", 38},  {"G2", 43}, {"C3", 48},  {"B1", 35},
      {"E2", 40}, {"E4", 64}, {"E5", 76}, {"Cb4", 59}, {"B#3", 60}, {"E#4", 65}, {"C0", 12}, {"G9", 127}, {"Dbb4", 60}};
  for (const auto& [text, midi] : numbers) {
    CAPTURE(text);
    CHECK(pitch(text).midi() == midi);
    CHECK(pitch(text).to_string() == text);
    CHECK(pitch_of(pitch(text).name, midi) == pitch(text));
  }
}

TEST_CASE("An accidental does not change the octave of the letter") {
  // Scientific pitch notation: Cb4 is a semitone under C4, so it sounds as B3.
  CHECK(pitch_of(name("Cb"), 59).to_string() == "Cb4");
  CHECK(pitch_of(name("B"), 59).to_string() == "B3");
  CHECK(pitch_of(name("B#"), 60).to_string() == "B#3");
  CHECK(pitch("Cb4").diatonic() == 28);
  CHECK(pitch("C4").diatonic() == 28);
  CHECK(pitch("B3").diatonic() == 27);
}

TEST_CASE("pitch_of finds the octave for every name and sound") {
  for (int fifths = -15; fifths <= 19; ++fifths) {
    const NoteName note = note_name_from_fifths(fifths);
    for (int midi = 0; midi < 128; ++midi) {
      if (midi % 12 == note.pitch_class()) CHECK(pitch_of(note, midi).midi() == midi);
    }
  }
}

TEST_CASE("Pitches need one octave figure") {
  for (const char* wrong : {"", "C", "4", "C44", "C-1", "H2", "C4 ", "C#b2"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_pitch(wrong));
  }
  CHECK(parse_pitch("e1") == parse_pitch("E1"));
}

TEST_CASE("Frequencies are equal temperament on A4 = 440 Hz") {
  // f = 440·2^((m−69)/12); the values are the formula's, computed apart from this program.
  const std::vector<std::pair<const char*, double>> hertz = {{"E1", 41.203},  {"A1", 55},     {"D2", 73.416},
                                                             {"G2", 97.999},  {"B0", 30.868}, {"C3", 130.813},
                                                             {"E4", 329.628}, {"A4", 440}};
  for (const auto& [text, frequency_wanted] : hertz) {
    CHECK(frequency(pitch(text).midi()) == Approx(frequency_wanted).margin(0.0005));
  }
}
