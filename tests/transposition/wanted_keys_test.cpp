#include "transposition/wanted_keys.h"

#include <catch2/catch.hpp>

#include "transposition/intervals.h"
#include "transposition/names.h"

using namespace fretsheaf;
using namespace fretsheaf::transposition;

namespace {

const theory::Key d_dorian{{theory::Letter::D, 0}, theory::Mode::dorian};

std::string wanted(const char* text) {
  const auto keys = wanted_keys(text, d_dorian);
  if (const auto* why = std::get_if<std::string>(&keys)) return "error: " + *why;
  std::string list;
  for (const theory::Key& key : std::get<std::vector<theory::Key>>(keys)) {
    list += (list.empty() ? "" : ", ") + key.to_string();
  }
  return list;
}

}  // namespace

TEST_CASE("a tonic keeps the mode, all are twelve") {
  CHECK(wanted("E") == "E dorian");
  CHECK(wanted("bb Dorian") == "Bb dorian");
  CHECK(wanted("D dorian") == "D dorian");
  // Six flats of two with six signs: Ab dorian, and not G# dorian.
  CHECK(wanted("all") ==
        "C dorian, C# dorian, D dorian, Eb dorian, E dorian, F dorian, F# dorian, G dorian, Ab dorian, A dorian, Bb "
        "dorian, B dorian");
}

TEST_CASE("the nearest way comes first, of two as near the one down") {
  CHECK(intervals_to(0) == std::vector<int>{0, -12, 12, -24, 24, -36, 36, -48, 48});
  CHECK(intervals_to(6) == std::vector<int>{-6, 6, -18, 18, -30, 30, -42, 42});
  CHECK(intervals_to(2).front() == 2);
  CHECK(intervals_to(7) == std::vector<int>{-5, 7, -17, 19, -29, 31, -41, 43});
}

TEST_CASE("a chord keeps how its kind is written") {
  CHECK(shifted_chord("Am7", 2) == "Bm7");
  CHECK(shifted_chord("Bb/D", 2) == "C/E");
  CHECK(shifted_chord("C6/9", -4) == "Ab6/9");
  CHECK(shifted_chord("C5", -7) == "Cb5");  // still the power chord
  CHECK(shifted_chord("Fø", 7) == "F#ø");
  CHECK(shifted_chord("F+7", 7) == "F#+7");
  CHECK(shifted_chord("Bb°7", -5) == "Cb°7");
  CHECK(shifted_chord("V7/ii", 3) == "V7/ii");
  CHECK(shifted_chord("N.C.", 3) == "N.C.");
  CHECK(shifted_chord("Bbb7", -5) == "Cbb7");
  CHECK(shifted_chord("Bbb7", -7) == "Ab7");  // for B with three flats
}

TEST_CASE("the chords of a form move, its bar lines and blanks stay") {
  CHECK(shifted_form("Dm7,G7  i7 |\n C/E IV7", 2) == "Em7,A7  i7 |\n D/F# IV7");
}
