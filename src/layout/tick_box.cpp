#include "layout/tick_box.h"

#include "layout/music_layer.h"

namespace fretsheaf::layout {

sheet::Path tick_box(sheet::Point corner, double side) {
  return framed(sheet::Part::ladder, {corner.x, corner.y, corner.x + side, corner.y + side}, tick_box_line * side);
}

}  // namespace fretsheaf::layout
