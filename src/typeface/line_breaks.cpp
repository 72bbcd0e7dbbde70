#include "typeface/line_breaks.h"

#include <linebreak.h>

namespace fretsheaf::typeface {
namespace {

// The library takes U+FFFF, which is no character, for the end of a text, and ends the program where there is more of
// it: the replacement character, as long and broken alike, stands in for it.
std::string without_end_mark(std::string_view utf8) {
  constexpr std::string_view end_mark = "\uFFFF";
  std::string text(utf8);
  for (std::size_t at = 0; (at = text.find(end_mark, at)) != std::string::npos;) {
    text.replace(at, end_mark.size(), "\uFFFD");
  }
  return text;
}

}  // namespace

std::vector<std::size_t> line_breaks(std::string_view utf8, const std::string& language) {
  // The library indexes its tables once.
  static const bool ready = (init_linebreak(), true);
  std::vector<std::size_t> breaks;
  if (!ready || utf8.empty()) return breaks;
  const std::string text = without_end_mark(utf8);
  std::string kinds(text.size(), LINEBREAK_NOBREAK);
  set_linebreaks_utf8(reinterpret_cast<const utf8_t*>(text.data()), text.size(), language.c_str(), kinds.data());
  for (std::size_t i = 0; i + 1 < kinds.size(); ++i) {
    if (kinds[i] == LINEBREAK_ALLOWBREAK || kinds[i] == LINEBREAK_MUSTBREAK) breaks.push_back(i + 1);
  }
  return breaks;
}

}  // namespace fretsheaf::typeface
