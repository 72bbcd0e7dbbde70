#include "fretboard/inlays.h"

#include <algorithm>
#include <array>

namespace fretsheaf::fretboard {

std::vector<Inlay> inlays(std::string_view instrument, const Neck& neck) {
  constexpr std::array<std::string_view, 5> at_the_tenth = {"ukulele", "baritone-ukulele", "mandolin", "banjo",
                                                            "tenor-banjo"};
  const int fourth = std::ranges::find(at_the_tenth, instrument) != at_the_tenth.end() ? 10 : 9;
  std::vector<Inlay> found;
  for (int octave = 0; octave < neck.frets; octave += 12) {
    for (const int fret : {3, 5, 7, fourth, 12}) {
      const int here = octave + fret;
      if (here > neck.capo && here <= neck.frets) found.push_back({here - neck.capo, fret == 12});
    }
  }
  return found;
}

}  // namespace fretsheaf::fretboard
