#include "fretboard/chord_shapes.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "fretboard/lines.h"

using namespace fretsheaf;
using namespace fretsheaf::fretboard;

namespace {

theory::Chord chord(const std::string& symbol) {
  return std::get<theory::Chord>(theory::parse_chord(symbol).value());
}

ShapeFrets frets(const std::string& text) {
  ShapeFrets result;
  for (const char sign : text) result.push_back(sign == 'x' ? std::nullopt : std::optional<int>(sign - '0'));
  return result;
}

std::string text(const ShapeFrets& frets) {
  std::string result;
  for (const std::optional<int>& fret : frets) {
    if (fret && *fret > 9) result += '-';
    result += fret ? std::to_string(*fret) : "x";
  }
  return result;
}

std::string first(const char* name, const std::string& symbol) {
  const Played on = instrument(name);
  const std::vector<ChordShape> shapes = chord_shapes(chord(symbol), on.neck, on.scale_length);
  return shapes.empty() ? "none" : text(shapes.front().frets);
}

std::string fingers(const char* name, const std::string& shape) {
  const Played on = instrument(name);
  const std::optional<ChordShape> fingered = fingered_shape(frets(shape), on.neck, on.scale_length);
  if (!fingered) return "none";
  std::string result;
  for (const int finger : fingered->fingers) result += std::to_string(finger);
  if (fingered->barre) {
    result +=
        " barre " + std::to_string(fingered->barre->fret) + " from " + std::to_string(fingered->barre->bottom_string);
  }
  return result;
}

using Table = std::vector<std::pair<const char*, const char*>>;

void check_first(const char* name, const Table& table) {
  for (const auto& [symbol, shape] : table) {
    CAPTURE(symbol);
    CHECK(first(name, symbol) == shape);
  }
}

}  // namespace

TEST_CASE("A guitar's first shapes are those that players learn first") {
  // Common practice.
  check_first("guitar",
              {{"C", "x32010"},   {"G", "320003"},     {"D", "xx0232"},     {"A", "x02220"},     {"E", "022100"},
               {"Am", "x02210"},  {"Em", "022000"},    {"Dm", "xx0231"},    {"F", "133211"},     {"B7", "x21202"},
               {"C7", "x32310"},  {"G7", "320001"},    {"D7", "xx0212"},    {"A7", "x02020"},    {"E7", "020100"},
               {"Bm", "x24432"},  {"F#m", "244222"},   {"Bb", "x13331"},    {"Cmaj7", "x32000"}, {"Am7", "x02010"},
               {"Em7", "020000"}, {"Gmaj7", "320002"}, {"Dsus4", "xx0233"}, {"Asus2", "x02200"}});
}

TEST_CASE("A ukulele's first shapes are those that players learn first") {
  // Common practice.
  check_first("ukulele", {{"C", "0003"},
                          {"G", "0232"},
                          {"F", "2010"},
                          {"Am", "2000"},
                          {"Dm", "2210"},
                          {"A", "2100"},
                          {"D", "2220"},
                          {"G7", "0212"},
                          {"C7", "0001"},
                          {"Em", "0432"},
                          {"D7", "2223"},
                          {"A7", "0100"},
                          {"E7", "1202"},
                          {"Bb", "3211"}});
}

TEST_CASE("Fingers go by fret and string, a barre lies under closed shapes") {
  // Common practice.
  CHECK(fingers("guitar", "x32010") == "032010");
  CHECK(fingers("guitar", "320003") == "210003");
  CHECK(fingers("guitar", "xx0232") == "000132");
  CHECK(fingers("guitar", "133211") == "134211 barre 1 from 6");
  CHECK(fingers("guitar", "x24432") == "013421 barre 2 from 5");
  CHECK(fingers("ukulele", "0003") == "0003");
  CHECK(fingers("ukulele", "2010") == "2010");
  CHECK(fingers("ukulele", "3211") == "3211 barre 1 from 2");
  CHECK(fingers("guitar", "x32313") == "none");
  CHECK(fingers("bass", "1x5x") == "none");
}

TEST_CASE("Tones go in the order of the trade where strings are too few") {
  const auto tones = [](const char* name, const char* symbol) {
    const Played on = instrument(name);
    const ChordShape shape = chord_shapes(chord(symbol), on.neck, on.scale_length).at(0);
    std::set<int> classes;
    for (std::size_t i = 0; i < shape.frets.size(); ++i) {
      if (!shape.frets[i]) continue;
      classes.insert(on.neck.midi({on.neck.strings() - static_cast<int>(i), *shape.frets[i]}) % 12);
    }
    return classes;
  };
  CHECK(tones("ukulele", "C9") == std::set<int>{0, 2, 4, 10});   // no fifth
  CHECK(tones("ukulele", "C11") == std::set<int>{0, 4, 5, 10});  // nor ninth
  CHECK(tones("ukulele", "C13") == std::set<int>{0, 4, 9, 10});  // nor eleventh
}

TEST_CASE("Every shape that is found holds its chord, within a hand") {
  int shapes = 0;
  for (const Instrument& each : instruments()) {
    const Played on = instrument(std::string(each.name).c_str());
    for (const char* root : {"C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"}) {
      for (const char* kind : {"", "m7", "7", "dim", "6"}) {
        const theory::Chord wanted = chord(std::string(root) + kind);
        std::set<int> allowed;
        for (const theory::NoteName tone : theory::chord_tones(wanted)) allowed.insert(tone.pitch_class());
        for (const ChordShape& shape : chord_shapes(wanted, on.neck, on.scale_length, 4)) {
          ++shapes;
          CAPTURE(each.name, root, kind, text(shape.frets));
          std::set<int> there;
          int lowest = 999;
          for (std::size_t i = 0; i < shape.frets.size(); ++i) {
            CHECK((shape.fingers[i] > 0) == (shape.frets[i].value_or(0) > 0));
            if (!shape.frets[i]) continue;
            const Place place{on.neck.strings() - static_cast<int>(i), *shape.frets[i]};
            CHECK(on.neck.has(place));
            there.insert(on.neck.midi(place) % 12);
            lowest = std::min(lowest, on.neck.midi(place));
          }
          for (const int tone : there) CHECK(allowed.count(tone) == 1);
          const std::size_t missing = allowed.size() - there.size();
          CHECK((missing == 0 || (missing == 1 && allowed.size() > 3)));
          CHECK(there.count(wanted.root.pitch_class()) == 1);
        }
      }
    }
  }
  CHECK(shapes > 2000);
}

TEST_CASE("The root or the named bass is lowest where strings rise") {
  for (const char* name : {"guitar", "guitar-7", "baritone-ukulele", "mandolin", "tenor-banjo", "bass-6"}) {
    const Played on = instrument(name);
    for (const char* symbol : {"C", "F#m", "Bb7", "D/F#", "Am/G", "Ebmaj7"}) {
      const theory::Chord wanted = chord(symbol);
      const ChordShape shape = chord_shapes(wanted, on.neck, on.scale_length).at(0);
      int lowest = 999;
      for (std::size_t i = 0; i < shape.frets.size(); ++i) {
        if (shape.frets[i])
          lowest = std::min(lowest, on.neck.midi({on.neck.strings() - static_cast<int>(i), *shape.frets[i]}));
      }
      CAPTURE(name, symbol, text(shape.frets));
      CHECK(lowest % 12 == wanted.bass.value_or(wanted.root).pitch_class());
    }
  }
}

TEST_CASE("A movable shape moves along the neck, down to open strings, and one that has open strings stays") {
  const Neck guitar = instrument("guitar").neck;
  CHECK(moved_shape(frets("x24432"), 3, guitar) == frets("x57765"));
  CHECK(moved_shape(frets("x24432"), -2, guitar) == frets("x02210"));
  CHECK_FALSE(moved_shape(frets("x24432"), -3, guitar));
  CHECK(moved_shape(frets("x24432"), 20, guitar).has_value());
  CHECK_FALSE(moved_shape(frets("x24432"), 21, guitar));
  CHECK_FALSE(moved_shape(frets("x02220"), 2, guitar));
  CHECK(moved_shape(frets("x02220"), 0, guitar) == frets("x02220"));
  // A short string has no first to fifth fret of its own.
  const Neck banjo = instrument("banjo").neck;
  CHECK(moved_shape(frets("75555"), -1, banjo) == frets("64444"));
  CHECK_FALSE(moved_shape(frets("75555"), -2, banjo));
}
