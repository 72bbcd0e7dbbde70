#include "layout/block.h"

namespace fretsheaf::layout {

void indent(Blocks& blocks, double by) {
  for (Block& block : blocks) sheet::translate(block.items, by, 0);
}

}  // namespace fretsheaf::layout
