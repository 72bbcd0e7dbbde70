#include "sheaf/logo.h"

#include <memory>
#include <string>
#include <utility>

#include "lesson/limits.h"
#include "render/image.h"
#include "sheaf/svg_logo.h"

namespace fretsheaf::sheaf {
namespace {

constexpr double most_proportion = 20;  // of the longer side to the shorter

// The reader lets .png and .svg alone through, in small letters or capitals.
bool is_svg(const std::string& path) {
  const char third_last = path.size() < 3 ? '\0' : path[path.size() - 3];
  return third_last == 's' || third_last == 'S';
}

}  // namespace

std::optional<score::Logo> read_logo(const lesson::Lesson& lesson, const platform::System& system,
                                     source::Diagnostics& diagnostics) {
  if (!lesson.logo) return std::nullopt;
  const auto refuse = [&](const std::string& why, const std::string& help) -> std::optional<score::Logo> {
    diagnostics.error(source::Code::unsound_value, lesson.logo->range, "this logo " + why, help);
    return std::nullopt;
  };
  auto bytes = system.read(lesson.logo_path, lesson::limits::logo_bytes);
  if (const auto* failed = std::get_if<platform::FileError>(&bytes)) return refuse(failed->what, {});
  score::Logo logo;
  logo.svg = is_svg(lesson.logo_path);
  logo.bytes = std::make_shared<const std::string>(std::get<std::string>(std::move(bytes)));
  logo.alternative = lesson.logo_alt;
  if (logo.bytes->empty()) return refuse("is an empty file", "save the picture anew from the program that drew it");
  if (logo.svg) {
    if (const auto problem = svg_problem(*logo.bytes))
      return refuse(
          *problem,
          "an SVG logo is made of shapes alone: turn its text into outlines, and what it refers to into parts of it");
  }
  const auto kind = logo.svg ? sheet::Image::Kind::svg : sheet::Image::Kind::png;
  const std::optional<render::ImageSize> size = render::image_size(kind, *logo.bytes);
  if (!size) {
    return refuse(std::string("is not ") + (logo.svg ? "an SVG" : "a PNG") + " file that can be drawn",
                  logo.svg ? "an SVG says its size in width and height, or in viewBox"
                           : "open it in a program that shows pictures, and save it as a PNG from there");
  }
  if (size->width > most_proportion * size->height || size->height > most_proportion * size->width) {
    return refuse("is too long and thin to be seen in a handout's head",
                  "it may be up to 20 times as long as it is wide");
  }
  logo.width = size->width;
  logo.height = size->height;
  return logo;
}

}  // namespace fretsheaf::sheaf
