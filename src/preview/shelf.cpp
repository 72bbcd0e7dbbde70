#include "preview/shelf.h"

namespace fretsheaf::preview {

void Shelf::put(const std::string& name, const std::shared_ptr<const std::string>& page) {
  const std::lock_guard lock(mutex_);
  std::erase_if(pages_, [](const auto& entry) { return entry.second.expired(); });
  // Of two pages with the same bytes, the one that lives longer.
  std::weak_ptr<const std::string>& place = pages_[name];
  if (place.expired()) place = page;
}

std::shared_ptr<const std::string> Shelf::take(const std::string& name) const {
  const std::lock_guard lock(mutex_);
  const auto page = pages_.find(name);
  return page == pages_.end() ? nullptr : page->second.lock();
}

}  // namespace fretsheaf::preview
