#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"
#include "typeface/fonts.h"

namespace fretsheaf::test {

// The boxes of what a page draws: each glyph, each line, each solid shape; thin curves and frames in short pieces, so
// that what they go around is not under them.
struct InkBox {
  sheet::Part part{};
  sheet::Box box;
  int item = 0;                         // the same for all boxes of one item
  const sheet::Group* event = nullptr;  // the event's group that holds it
  std::string text;                     // of a glyph run
};
std::vector<InkBox> ink_boxes(const sheet::Page& page, typeface::Shaper& shaper);

struct Collision {
  InkBox a;
  InkBox b;
};
std::string describe(const InkBox& ink);
std::string describe(const Collision& collision);

// Pairs of boxes that lie on each other and may not: all but those of the one table in music_collisions.cpp.
std::vector<Collision> collisions(const sheet::Page& page, typeface::Shaper& shaper);

// What lies outside the given box (string letters hang left of it by `hanging`).
std::vector<InkBox> outside(const sheet::Page& page, typeface::Shaper& shaper, sheet::Box text, double hanging);

}  // namespace fretsheaf::test
