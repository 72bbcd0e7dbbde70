#include "typeface/line_breaks.h"

#include <linebreak.h>

namespace fretsheaf::typeface {

std::vector<std::size_t> line_breaks(std::string_view utf8, const std::string& language) {
  // The library indexes its tables once.
  static const bool ready = (init_linebreak(), true);
  std::vector<std::size_t> breaks;
  if (!ready || utf8.empty()) return breaks;
  std::string kinds(utf8.size(), LINEBREAK_NOBREAK);
  set_linebreaks_utf8(reinterpret_cast<const utf8_t*>(utf8.data()), utf8.size(), language.c_str(), kinds.data());
  for (std::size_t i = 0; i + 1 < kinds.size(); ++i) {
    if (kinds[i] == LINEBREAK_ALLOWBREAK || kinds[i] == LINEBREAK_MUSTBREAK) breaks.push_back(i + 1);
  }
  return breaks;
}

}  // namespace fretsheaf::typeface
