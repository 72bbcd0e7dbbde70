#include "sheaf/later_pages.h"

namespace fretsheaf::sheaf {

void remove_later_pages(const std::string& handouts, const Made& made, platform::System& system) {
  if (made.svg_page_prefix.empty()) return;
  for (int page = made.svg_pages + 1;; ++page) {
    const std::string old = handouts + made.svg_page_prefix + std::to_string(page) + ".svg";
    if (!system.exists(old)) return;
    system.remove(old);
  }
}

}  // namespace fretsheaf::sheaf
