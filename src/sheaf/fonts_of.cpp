#include "sheaf/fonts_of.h"

namespace fretsheaf::sheaf {

std::optional<std::string> open_fonts(const templates::Template& look, typeface::FontSet& fonts,
                                      std::vector<std::vector<typeface::FontId>>& by_role) {
  by_role.assign(look.type.size(), {});
  for (std::size_t role = 0; role < look.type.size(); ++role) {
    for (const std::string& name : look.type[role].fonts) {
      const auto opened = fonts.open(name);
      if (const auto* missing = std::get_if<std::string>(&opened)) return *missing;
      by_role[role].push_back(std::get<typeface::FontId>(opened));
    }
  }
  return std::nullopt;
}

}  // namespace fretsheaf::sheaf
