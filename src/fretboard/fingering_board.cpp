#include "fretboard/fingering_board.h"

#include <algorithm>
#include <cmath>

#include "fretboard/reach.h"

namespace fretsheaf::fretboard {

const int most_micrometres = static_cast<int>(most_reach * 1000);
const int easy_micrometres = static_cast<int>(easy_reach * 1000);

Board::Board(Neck of, double scale_length) : neck(std::move(of)) {
  for (int fret = 0; fret <= std::max(1, neck.last_fret()); ++fret) {
    const double position = fret_position(neck, scale_length, fret);
    micrometres.push_back(static_cast<int>(std::lround(1000 * position)));
    millimetres.push_back((micrometres.back() + 500) / 1000);
  }
}

int kept_reach(int original_span) {
  return std::max(most_micrometres, original_span) / 10 * 11;
}

}  // namespace fretsheaf::fretboard
