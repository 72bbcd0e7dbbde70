#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "spoken/marks.h"
#include "spoken/places.h"
#include "spoken/sounding.h"

namespace fretsheaf::spoken {

// A fret as it stands in a bar's words.
struct SaidFret {
  std::size_t begin = 0;
  std::size_t size = 0;
  int fret = 0;
};

// What is told of the inside of a bar: a sentence a line. Two bars with equal words sound alike, and are played alike.
struct BarBody {
  std::string text;
  std::vector<SaidFret> frets;
};

// Marks that come before the notes are told in the bar's head where it begins: what is inside may then be as in
// another.
bool head_tells(const Mark& mark, const score::Bar& bar);

BarBody body_of(const score::Example& example, std::size_t bar, const std::vector<Mark>& marks, const Places& places,
                const Phrases& phrases);

}  // namespace fretsheaf::spoken
