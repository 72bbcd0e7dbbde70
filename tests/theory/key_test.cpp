#include "theory/key.h"

#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "theory/keys.h"

using namespace fretsheaf::theory;

namespace {

Key key(const std::string& text) {
  return parse_key(text).value();
}

std::string scale_text(const Key& key) {
  std::string text;
  for (const NoteName& note : key.scale()) text += (text.empty() ? "" : " ") + note.to_string();
  return text;
}

const std::vector<Mode> all_modes = {Mode::major,  Mode::minor,      Mode::dorian, Mode::phrygian,
                                     Mode::lydian, Mode::mixolydian, Mode::locrian};

// Every key of every mode that has a signature.
std::vector<Key> every_key() {
  std::vector<Key> keys;
  for (const Mode mode : all_modes) {
    for (int fifths = -15; fifths <= 19; ++fifths) {
      const Key candidate{note_name_from_fifths(fifths), mode};
      if (has_signature(candidate)) keys.push_back(candidate);
    }
  }
  return keys;
}

}  // namespace

TEST_CASE("The fifteen major and minor keys have the signatures of the circle of fifths") {
  // Common practice: the line of fifths and its relative minors.
  const std::vector<std::tuple<const char*, const char*, int>> table = {
      {"C", "A", 0},   {"G", "E", 1},   {"D", "B", 2},    {"A", "F#", 3},   {"E", "C#", 4},
      {"B", "G#", 5},  {"F#", "D#", 6}, {"C#", "A#", 7},  {"F", "D", -1},   {"Bb", "G", -2},
      {"Eb", "C", -3}, {"Ab", "F", -4}, {"Db", "Bb", -5}, {"Gb", "Eb", -6}, {"Cb", "Ab", -7}};
  for (const auto& [major, minor, signs] : table) {
    CAPTURE(major);
    CHECK(key(std::string(major) + " major").signature() == signs);
    CHECK(key(std::string(minor) + " minor").signature() == signs);
  }
}

TEST_CASE("The modes on white keys have no signs") {
  // Common practice: the modes are the white keys from each of these notes.
  for (const char* text : {"C major", "D dorian", "E phrygian", "F lydian", "G mixolydian", "A minor", "B locrian"}) {
    CAPTURE(text);
    CHECK(key(text).signature() == 0);
  }
  CHECK(key("A mixolydian").signature() == 2);
  CHECK(key("F# dorian").signature() == 4);
  CHECK(key("E phrygian").scale()[1].to_string() == "F");
  CHECK(scale_text(key("C lydian")) == "C D E F# G A B");
  CHECK(scale_text(key("C locrian")) == "C Db Eb F Gb Ab Bb");
}

TEST_CASE("Scales are spelled with each letter once") {
  CHECK(scale_text(key("C# major")) == "C# D# E# F# G# A# B#");
  CHECK(scale_text(key("Cb major")) == "Cb Db Eb Fb Gb Ab Bb");
  CHECK(scale_text(key("Ab minor")) == "Ab Bb Cb Db Eb Fb Gb");
  for (const Key& each : every_key()) {
    std::set<Letter> letters;
    for (const NoteName& note : each.scale()) letters.insert(note.letter);
    CHECK(letters.size() == 7);
  }
}

TEST_CASE("Signature signs fall on letters in the order of sharps and flats") {
  // Common practice: sharps F C G D A E B, flats B E A D G C F.
  const std::vector<Letter> sharps = {Letter::F, Letter::C, Letter::G, Letter::D, Letter::A, Letter::E, Letter::B};
  for (int signs = -7; signs <= 7; ++signs) {
    const Key major{note_name_from_fifths(signs), Mode::major};
    for (int index = 0; index < 7; ++index) {
      const int sharp = index < signs ? 1 : 0;
      const int flat = 6 - index < -signs ? -1 : 0;
      CHECK(major.alteration_of(sharps[static_cast<std::size_t>(index)]) == sharp + flat);
    }
  }
  CHECK(key("G major").alteration_of(Letter::F) == 1);
}

TEST_CASE("Steps of the modes") {
  // Common practice: semitones of each mode's steps, up to the octave.
  const std::vector<std::pair<Mode, std::vector<int>>> patterns = {
      {Mode::major, {2, 2, 1, 2, 2, 2, 1}},  {Mode::minor, {2, 1, 2, 2, 1, 2, 2}},
      {Mode::dorian, {2, 1, 2, 2, 2, 1, 2}}, {Mode::phrygian, {1, 2, 2, 2, 1, 2, 2}},
      {Mode::lydian, {2, 2, 2, 1, 2, 2, 1}}, {Mode::mixolydian, {2, 2, 1, 2, 2, 1, 2}},
      {Mode::locrian, {1, 2, 2, 1, 2, 2, 2}}};
  for (const auto& [mode, steps] : patterns) {
    for (int fifths = -12; fifths <= 12; ++fifths) {
      const std::array<NoteName, 7> scale = Key{note_name_from_fifths(fifths), mode}.scale();
      for (std::size_t step = 0; step < 7; ++step) {
        const int semitones = scale[(step + 1) % 7].pitch_class() - scale[step].pitch_class();
        CHECK((semitones + 12) % 12 == steps[step]);
      }
    }
  }
}

TEST_CASE("Keys are read as written") {
  CHECK(key("Bb major") == Key{{Letter::B, -1}, Mode::major});
  CHECK(key("d Dorian") == key("D dorian"));
  CHECK(key("  F#  minor ") == key("F# minor"));
  CHECK(parse_key("E", Mode::dorian) == key("E dorian"));
  CHECK(parse_key("E minor", Mode::dorian) == key("E minor"));
  for (const char* wrong :
       {"", " ", "E", "H major", "major", "E  ", "E dorain", "Eminor", "E minor minor", "E# b minor"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_key(wrong));
  }
  for (const Key& each : every_key()) CHECK(parse_key(each.to_string()) == each);
}

TEST_CASE("There are fifteen keys with a signature in each mode") {
  CHECK(every_key().size() == 15 * 7);
  CHECK_FALSE(has_signature(key("G# major")));
  CHECK_FALSE(has_signature(key("Db minor")));
  CHECK(has_signature(key("B# locrian")));
}

TEST_CASE("A key beyond seven signs has an enharmonic one") {
  CHECK(enharmonic_key(key("A# major")) == key("Bb major"));
  CHECK(enharmonic_key(key("G# major")) == key("Ab major"));
  CHECK(enharmonic_key(key("Fb major")) == key("E major"));
  CHECK(enharmonic_key(key("Db minor")) == key("C# minor"));
  CHECK(enharmonic_key(key("D# dorian")) == key("Eb dorian"));
  CHECK(enharmonic_key(key("D dorian")) == key("D dorian"));
  CHECK(enharmonic_key(key("F# major")) == key("Gb major"));
  CHECK(enharmonic_key(key("Cb major")) == key("B major"));
}

TEST_CASE("All keys are the twelve with fewest signs, flats at six") {
  std::string majors;
  for (const Key& each : all_keys(Mode::major)) majors += each.tonic.to_string() + " ";
  CHECK(majors == "C Db D Eb E F Gb G Ab A Bb B ");
  std::string minors;
  for (const Key& each : all_keys(Mode::minor)) minors += each.tonic.to_string() + " ";
  CHECK(minors == "C C# D Eb E F F# G G# A Bb B ");
  for (const Mode mode : all_modes) {
    std::set<int> sounds;
    std::set<int> signatures;
    for (const Key& each : all_keys(mode)) {
      CHECK(each.mode == mode);
      sounds.insert(each.tonic.pitch_class());
      signatures.insert(each.signature());
    }
    CHECK(sounds.size() == 12);
    CHECK(signatures == std::set<int>{-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5});
  }
}

TEST_CASE("Slugs name output files") {
  CHECK(key("A minor").slug() == "a-minor");
  CHECK(key("Bb major").slug() == "b-flat-major");
  CHECK(key("F# dorian").slug() == "f-sharp-dorian");
  CHECK(key("F## locrian").slug() == "f-double-sharp-locrian");
}

TEST_CASE("Degrees are counted in the major scale on the tonic") {
  // Contract: the third of a minor key is b3. Names: common practice.
  CHECK(degree_name(key("A minor"), {3, -1}).to_string() == "C");
  CHECK(degree_name(key("A minor"), {3, 0}).to_string() == "C#");
  CHECK(degree_name(key("D dorian"), {6, 0}).to_string() == "B");
  CHECK(degree_name(key("Gb major"), {7, -1}).to_string() == "Fb");
  CHECK(degree_name(key("C# major"), {4, 1}).to_string() == "F##");
  CHECK(degree_of(key("A minor"), {Letter::C, 0}) == Degree{3, -1});
  CHECK(degree_of(key("E phrygian"), {Letter::F, 0}) == Degree{2, -1});
  CHECK(degree_of(key("C lydian"), {Letter::F, 1}) == Degree{4, 1});
  CHECK(degree_name(key("Cb major"), {7, -2}).to_string() == "Ab");
}

TEST_CASE("A degree's name has that degree again, in every key") {
  for (const Key& each : every_key()) {
    for (int number = 1; number <= 7; ++number) {
      for (int alteration = -1; alteration <= 1; ++alteration) {
        const Degree degree{number, alteration};
        const NoteName note = degree_name(each, degree);
        if (note != note_name_from_fifths(each.tonic.fifths() + fifths_of(degree))) continue;  // the practical name
        CHECK(degree_of(each, note) == degree);
      }
    }
    for (const NoteName& note : each.scale()) CHECK(degree_name(each, degree_of(each, note)) == note);
  }
}

TEST_CASE("Modes are named and listed") {
  for (const Mode mode : all_modes) CHECK(parse_mode(mode_name(mode)) == mode);
  CHECK(mode_names().size() == all_modes.size());
  CHECK_FALSE(parse_mode("ionian"));
}
