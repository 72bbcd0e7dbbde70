#include "layout/assembly.h"

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

void Assembly::open(const std::vector<Nest>& nests) {
  std::size_t shared = 0;
  while (shared < nests.size() && shared < nests_.size() && nests[shared].id == nests_[shared].id) ++shared;
  close(shared);
  for (std::size_t i = shared; i < nests.size(); ++i) {
    sheet::Group group;
    group.tag = nests[i].tag;
    group.example = nests[i].example;
    groups_.push_back(std::move(group));
    nests_.push_back(nests[i]);
  }
}

void Assembly::place(Block block, double x, double y) {
  open(block.nests);
  sheet::translate(block.items, x, y);
  for (sheet::Item& item : block.items) {
    // The lines of one list item are one body.
    auto* group = std::get_if<sheet::Group>(&item);
    auto* before = top().empty() ? nullptr : std::get_if<sheet::Group>(&top().back());
    const bool goes_on = group != nullptr && before != nullptr && group->tag == sheet::Tag::list_body &&
                         before->tag == sheet::Tag::list_body;
    if (!goes_on) {
      top().push_back(std::move(item));
      continue;
    }
    for (sheet::Item& inner : group->items) before->items.push_back(std::move(inner));
  }
}

std::vector<sheet::Item> Assembly::take() {
  close(0);
  return std::move(items_);
}

}  // namespace fretsheaf::layout
