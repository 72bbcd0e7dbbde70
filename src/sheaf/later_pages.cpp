#include "sheaf/later_pages.h"

namespace fretsheaf::sheaf {

void remove_later_pages(const std::string& handouts, const Made& made, platform::System& system) {
  for (const Made::SvgPages& set : made.svg_pages) {
    for (int page = set.pages + 1;; ++page) {
      const std::string old = handouts + set.prefix + std::to_string(page) + ".svg";
      if (!system.exists(old)) break;
      system.remove(old);
    }
  }
}

}  // namespace fretsheaf::sheaf
