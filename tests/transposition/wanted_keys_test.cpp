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

TEST_CASE("a key that is written otherwise is no key, and the one that was meant is named") {
  // As outputs are named, in words, and as other languages call them.
  CHECK(wanted("b-flat-dorian") == "error: 'b-flat-dorian' is no key; did you mean 'Bb dorian'?");
  CHECK(wanted("f-sharp") == "error: 'f-sharp' is no key; did you mean 'F# dorian'?");
  CHECK(wanted("E flat") == "error: 'E flat' is no key; did you mean 'Eb dorian'?");
  CHECK(wanted("E flat dorain") == "error: 'E flat dorain' is no key; did you mean 'Eb dorian'?");
  CHECK(wanted("A♭") == "error: 'A♭' is no key; did you mean 'Ab dorian'?");
  CHECK(wanted("E\u266Dm") == "error: 'E\u266Dm' is no key; did you mean 'Eb minor'?");
  CHECK(wanted("Ebm") == "error: 'Ebm' is no key; did you mean 'Eb minor'?");
  CHECK(wanted("Cmaj") == "error: 'Cmaj' is no key; did you mean 'C major'?");
  CHECK(wanted("H") == "error: 'H' is no key; did you mean 'B dorian'?");
  CHECK(wanted("Fis") == "error: 'Fis' is no key; did you mean 'F# dorian'?");
  CHECK(wanted("As") == "error: 'As' is no key; did you mean 'Ab dorian'?");
  CHECK(wanted("Sol") == "error: 'Sol' is no key; did you mean 'G dorian'?");
  CHECK(wanted("x") == "error: 'x' is no key; write a tonic and a mode, such as \"D dorian\"");
  CHECK(wanted("") == "error: '' is no key; write a tonic and a mode, such as \"D dorian\"");
  CHECK(wanted("al") == "error: 'al' is no key; did you mean 'all'?");
  CHECK(wanted("E dorain") == "error: 'dorain' is no mode; did you mean 'E dorian'?");
}

TEST_CASE("tonics beyond seven signs are refused, and the enharmonic one is named") {
  CHECK(wanted("G## dorian") ==
        "error: 'G## dorian' would have 13 sharps, and a signature has at most seven; write \"A dorian\", which sounds "
        "the same");
  CHECK(
      wanted("Fb") ==
      "error: 'Fb' would have 10 flats, and a signature has at most seven; write \"E dorian\", which sounds the same");
  CHECK(wanted("A#") ==
        "error: 'A#' would have 8 sharps, and a signature has at most seven; write \"Bb dorian\", which sounds the "
        "same");
  CHECK(wanted("D#") == "D# dorian");  // seven
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
