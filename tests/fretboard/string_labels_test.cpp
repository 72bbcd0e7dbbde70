#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "fretboard/neck.h"

using namespace fretsheaf;
using namespace fretsheaf::fretboard;

namespace {

using Labels = std::vector<std::string>;

// The tab's bottom line first, as tunings are written.
Neck tuned(const std::vector<const char*>& pitches) {
  Neck neck;
  for (const char* pitch : pitches) neck.tuning.push_back(theory::parse_pitch(pitch).value());
  return neck;
}

Neck neck_of(const char* name) {
  const Instrument& instrument = *find_instrument(name);
  return {instrument.tuning, instrument.frets, 0, instrument.short_fifth_string};
}

}  // namespace

TEST_CASE("Strings are labelled by letter, the top line first, the higher of two in lower case") {
  // The lesson format's own examples are bass, guitar and banjo.
  CHECK(string_labels(neck_of("bass")) == Labels{"G", "D", "A", "E"});
  CHECK(string_labels(neck_of("guitar")) == Labels{"e", "B", "G", "D", "A", "E"});
  CHECK(string_labels(neck_of("banjo")) == Labels{"d", "B", "G", "D", "g"});
  CHECK(string_labels(neck_of("bass-5")) == Labels{"G", "D", "A", "E", "B"});
  CHECK(string_labels(neck_of("bass-6")) == Labels{"C", "G", "D", "A", "E", "B"});
  CHECK(string_labels(neck_of("guitar-7")) == Labels{"e", "b", "G", "D", "A", "E", "B"});
  CHECK(string_labels(neck_of("ukulele")) == Labels{"A", "E", "C", "G"});
  CHECK(string_labels(neck_of("baritone-ukulele")) == Labels{"E", "B", "G", "D"});
  CHECK(string_labels(neck_of("mandolin")) == Labels{"E", "A", "D", "G"});
  CHECK(string_labels(neck_of("tenor-banjo")) == Labels{"A", "D", "G", "C"});
}

TEST_CASE("Accidentals belong to the letter") {
  CHECK(string_labels(tuned({"Eb1", "Ab1", "Db2", "Gb2"})) == Labels{"Gb", "Db", "Ab", "Eb"});
  CHECK(string_labels(tuned({"Eb2", "Ab2", "Db3", "Gb3", "Bb3", "Eb4"})) == Labels{"eb", "Bb", "Gb", "Db", "Ab", "Eb"});
  CHECK(string_labels(tuned({"D2", "A2", "D#3"})) == Labels{"D#", "A", "D"});
}

TEST_CASE("Three strings that share a letter are numbered, the others are not") {
  const Neck open_d = tuned({"D2", "A2", "D3", "F#3", "A3", "D4"});
  CHECK(string_labels(open_d) == Labels{"1", "a", "F#", "4", "A", "6"});
  CHECK_FALSE(string_of_label(open_d, "D"));
  CHECK_FALSE(string_of_label(open_d, "d"));
  CHECK(string_of_label(open_d, "4") == 4);
  CHECK(string_of_label(open_d, "a") == 2);
  CHECK(string_of_label(open_d, "A") == 5);
  CHECK(string_of_label(open_d, "f#") == 3);
}

TEST_CASE("Of two strings in unison the upper line is the lower-case one") {
  CHECK(string_labels(tuned({"G3", "D4", "D4"})) == Labels{"d", "D", "G"});
}

TEST_CASE("A label means a string in any case where that is clear") {
  const Neck bass = neck_of("bass");
  CHECK(string_of_label(bass, "G") == 1);
  CHECK(string_of_label(bass, "g") == 1);
  CHECK(string_of_label(bass, "e") == 4);
  const Neck guitar = neck_of("guitar");
  CHECK(string_of_label(guitar, "e") == 1);
  CHECK(string_of_label(guitar, "E") == 6);
  CHECK(string_of_label(guitar, "b") == 2);
  CHECK(string_of_label(tuned({"Bb1", "Eb2"}), "bb") == 2);
  CHECK(string_of_label(tuned({"Bb1", "Eb2"}), "eb") == 1);
}

TEST_CASE("Numbers always work, and what is no label means no string") {
  const Neck guitar = neck_of("guitar");
  for (int string = 1; string <= 6; ++string) CHECK(string_of_label(guitar, std::to_string(string)) == string);
  for (const char* wrong : {"", "0", "7", "01", "-1", "+1", "1 ", "C", "EE", "E2", "H", "Eb", "count", "99999999999"}) {
    CAPTURE(wrong);
    CHECK_FALSE(string_of_label(guitar, wrong));
  }
}

TEST_CASE("Every instrument's labels lead back to their strings") {
  for (const Instrument& instrument : instruments()) {
    const Neck neck{instrument.tuning, instrument.frets, 0, instrument.short_fifth_string};
    const Labels labels = string_labels(neck);
    for (std::size_t index = 0; index < labels.size(); ++index) {
      CHECK(string_of_label(neck, labels[index]) == static_cast<int>(index) + 1);
    }
  }
}
