#include "layout/assembly.h"

#include <algorithm>
#include <utility>

namespace fretsheaf::layout {

std::vector<sheet::Item>& Assembly::top() {
  return groups_.empty() ? items_ : groups_.back().items;
}

void Assembly::close(std::size_t depth) {
  while (groups_.size() > depth) {
    sheet::Group group = std::move(groups_.back());
    groups_.pop_back();
    nests_.pop_back();
    top().emplace_back(std::move(group));
  }
}

void Assembly::open(std::span<const Nest> nests) {
  std::size_t shared = 0;
  while (shared < nests.size() && shared < nests_.size() && nests[shared].id == nests_[shared].id) ++shared;
  close(shared);
  for (std::size_t i = shared; i < nests.size(); ++i) {
    sheet::Group group;
    group.tag = nests[i].tag;
    group.alternative = nests[i].alternative;
    group.flow = nests[i].id;
    group.example = nests[i].example;
    groups_.push_back(std::move(group));
    nests_.push_back(nests[i]);
  }
}

// An item's mark lies in the item, what follows it in the item's body.
void Assembly::place_marks(Block& block) {
  const auto is_mark = [](const sheet::Item& item) {
    const auto* group = std::get_if<sheet::Group>(&item);
    return group != nullptr && group->tag == sheet::Tag::list_label;
  };
  std::vector<std::size_t> ends;  // of the nests as far as each item
  for (std::size_t i = 0; i < block.nests.size(); ++i) {
    if (block.nests[i].tag == sheet::Tag::list_item) ends.push_back(i + 1);
  }
  // Not the algorithm over ranges: Clang 14, which the checks are built with, cannot read what GCC 12's library gives
  // back.
  const auto rest = std::stable_partition(block.items.begin(), block.items.end(), is_mark);
  const auto marks = static_cast<std::size_t>(rest - block.items.begin());
  const std::size_t first = ends.size() - std::min(marks, ends.size());
  for (std::size_t i = 0; i < marks; ++i) {
    if (first + i < ends.size()) open(std::span(block.nests).first(ends[first + i]));
    top().push_back(std::move(block.items[i]));
  }
  block.items.erase(block.items.begin(), rest);
}

void Assembly::place(Block block, double x, double y) {
  sheet::translate(block.items, x, y);
  place_marks(block);
  open(block.nests);
  for (sheet::Item& item : block.items) top().push_back(std::move(item));
}

std::vector<sheet::Item> Assembly::take() {
  close(0);
  return std::move(items_);
}

}  // namespace fretsheaf::layout
