#pragma once

#include <span>
#include <vector>

#include "layout/block.h"

namespace fretsheaf::layout {

// Puts blocks beneath one another into one list of items, each inside the groups that it names;
// neighbours that name the same group share it.
class Assembly {
 public:
  void place(Block block, double x, double y);
  std::vector<sheet::Item> take();

 private:
  void open(std::span<const Nest> nests);
  void place_marks(Block& block);
  void close(std::size_t depth);
  std::vector<sheet::Item>& top();

  std::vector<sheet::Item> items_;
  std::vector<Nest> nests_;
  std::vector<sheet::Group> groups_;  // of nests_, open
};

}  // namespace fretsheaf::layout
