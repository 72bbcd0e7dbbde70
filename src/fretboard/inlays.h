#pragma once

#include <string_view>
#include <vector>

#include "fretboard/neck.h"

namespace fretsheaf::fretboard {

// A mark that makers set into the neck so that the hand finds its way.
struct Inlay {
  int fret = 0;  // counted from the capo, as places are
  bool two = false;

  bool operator==(const Inlay&) const = default;
};

// The inlays between the capo and the last fret, upward: at frets 3, 5, 7, 9, 12 (two), 15, 17, 19, 21 and 24 (two) of
// the bare neck and on from there by the octave; on ukuleles, mandolins and banjos the fourth is at 10 (common
// practice).
std::vector<Inlay> inlays(std::string_view instrument, const Neck& neck);

}  // namespace fretsheaf::fretboard
