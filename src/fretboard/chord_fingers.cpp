#include <algorithm>

#include "fretboard/chord_shapes.h"
#include "fretboard/reach.h"

namespace fretsheaf::fretboard {

namespace {

constexpr int fingers_of_a_hand = 4;

struct Stopped {
  int fret = 0;
  std::size_t index = 0;  // of its string, from the bottom line
};

// The lowest fret first, then the bottom line.
std::vector<Stopped> stopped_of(const ShapeFrets& frets) {
  std::vector<Stopped> stopped;
  for (std::size_t index = 0; index < frets.size(); ++index) {
    if (frets[index] && *frets[index] > 0) stopped.push_back({*frets[index], index});
  }
  std::ranges::stable_sort(stopped, {}, &Stopped::fret);
  return stopped;
}

bool barre_lies(const ShapeFrets& frets, const std::vector<Stopped>& stopped) {
  if (stopped.size() < 2 || stopped[1].fret != stopped[0].fret) return false;
  const auto bottom = frets.begin() + static_cast<std::ptrdiff_t>(stopped.front().index);
  return std::none_of(bottom, frets.end(), [](const std::optional<int>& fret) { return fret == 0; });
}

// Gives each note the next finger, leaving one out for each fret between where they suffice; one or two notes on the
// first three frets take the fingers of a hand that lies at the first.
void number(std::vector<int>& fingers, const std::vector<Stopped>& stopped, std::size_t from) {
  const int lowest = stopped.front().fret;
  const int position = stopped.size() <= 2 && from == 0 && lowest <= 3 ? 1 : lowest;
  const auto left = [&](std::size_t i) { return static_cast<int>(stopped.size() - 1 - i); };
  int finger = from > 0 ? 1 : 0;
  for (std::size_t i = from; i < stopped.size(); ++i) {
    const int reaching = stopped[i].fret - position + 1;
    finger = std::max(finger + 1, std::min(reaching, fingers_of_a_hand - left(i)));
    fingers[stopped[i].index] = finger;
  }
}

}  // namespace

std::optional<ChordShape> fingered_shape(const ShapeFrets& frets, const Neck& neck, double scale_length) {
  ChordShape shape{frets, std::vector<int>(frets.size(), 0), std::nullopt};
  const std::vector<Stopped> stopped = stopped_of(frets);
  if (stopped.empty()) return shape;
  const int lowest = stopped.front().fret;
  const double from = fret_position(neck, scale_length, lowest);
  if (fret_position(neck, scale_length, stopped.back().fret) - from > most_reach) return std::nullopt;
  const bool open = std::ranges::find(frets, std::optional<int>(0)) != frets.end();
  const bool many = stopped.size() > fingers_of_a_hand;
  std::size_t next = 0;
  if (barre_lies(frets, stopped) && (many || !open)) {
    shape.barre = Barre{lowest, neck.strings() - static_cast<int>(stopped.front().index)};
    for (; next < stopped.size() && stopped[next].fret == lowest; ++next) shape.fingers[stopped[next].index] = 1;
  }
  const std::size_t fingers = stopped.size() - next + (shape.barre ? 1 : 0);
  if (fingers > fingers_of_a_hand) return std::nullopt;
  number(shape.fingers, stopped, next);
  return shape;
}

}  // namespace fretsheaf::fretboard
