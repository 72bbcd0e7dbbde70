#include "fretboard/inlays.h"

#include <catch2/catch.hpp>
#include <string>

#include "fretboard/lines.h"

using namespace fretsheaf::fretboard;

namespace {

std::string frets(const char* name, int capo = 0) {
  Neck neck = instrument(name).neck;
  neck.capo = capo;
  std::string text;
  for (const Inlay& inlay : inlays(name, neck)) {
    text += (text.empty() ? "" : " ") + std::to_string(inlay.fret) + (inlay.two ? "+" : "");
  }
  return text;
}

}  // namespace

// Common practice.
TEST_CASE("Inlays lie where makers set them") {
  CHECK(frets("guitar") == "3 5 7 9 12+ 15 17 19 21 24+");
  CHECK(frets("bass") == "3 5 7 9 12+ 15 17 19 21 24+");
  CHECK(frets("ukulele") == "3 5 7 10 12+ 15");
  CHECK(frets("mandolin") == "3 5 7 10 12+ 15 17 19");
  CHECK(frets("banjo") == "3 5 7 10 12+ 15 17 19 22");
}

TEST_CASE("A capo moves the hand's counting, not the inlays") {
  CHECK(frets("guitar", 2) == "1 3 5 7 10+ 13 15 17 19 22+");
  CHECK(frets("ukulele", 5) == "2 5 7+ 10");
}
