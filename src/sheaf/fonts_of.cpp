#include "sheaf/fonts_of.h"

#include "lesson/keys_paths.h"
#include "typeface/known_fonts.h"

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

std::optional<std::string> font_outside(const templates::Template& look, const std::string& root,
                                        const platform::System& system) {
  const auto is_outside = [&](const std::string& font) {
    return !lesson::is_inside(font, root) ||
           (system.exists(font) &&
            !lesson::is_inside(system.real_path(font), system.real_path(root.empty() ? "." : root)));
  };
  for (const templates::TypeStyle& role : look.type) {
    for (const std::string& font : role.fonts) {
      if (typeface::is_font_path(font) && is_outside(font)) return font;
    }
  }
  return std::nullopt;
}

}  // namespace fretsheaf::sheaf
