#pragma once

#include <span>
#include <vector>

#include "sheet/sheet.h"

namespace fretsheaf::sheet {

// The groups that hold an item, outermost first.
using GroupChain = std::span<const Group* const>;

namespace detail {

template <typename Visit>
void walk(const std::vector<Item>& items, std::vector<const Group*>& chain, Visit& visit) {
  for (const Item& item : items) {
    visit(item, GroupChain(chain));
    const auto* group = std::get_if<Group>(&item);
    if (group == nullptr) continue;
    chain.push_back(group);
    walk(group->items, chain, visit);
    chain.pop_back();
  }
}

}  // namespace detail

// Calls `visit(const Item&, GroupChain)` for every item in the order of drawing; a group comes before what it holds.
template <typename Visit>
void walk(const std::vector<Item>& items, Visit&& visit) {
  std::vector<const Group*> chain;
  detail::walk(items, chain, visit);
}

template <typename Visit>
void walk(const Page& page, Visit&& visit) {
  walk(page.items, visit);
}

}  // namespace fretsheaf::sheet
