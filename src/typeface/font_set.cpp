#include <algorithm>
#include <cmath>
#include <utility>

#include "typeface/face.h"
#include "typeface/fonts.h"
#include "typeface/known_fonts.h"
#include "typeface/line_shaper.h"

namespace fretsheaf::typeface {
namespace {

// The largest packaged text fonts are under 20 MiB.
constexpr std::size_t most_font_bytes = std::size_t{64} << 20;

// The file's name without folders and ending, so that no path gets into an output.
std::string stem(std::string_view path) {
  path.remove_prefix(path.rfind('/') + 1);
  return std::string(path.substr(0, path.rfind('.')));
}

std::string unknown_name(std::string_view name) {
  std::string message = "there is no font named \"" + std::string(name) + "\"; the names are";
  for (const KnownFont& font : known_fonts()) message += " " + font.name;
  return message;
}

}  // namespace

struct FontSet::Impl {
  explicit Impl(const platform::System& used_system) : system(used_system) {}

  Face& face(FontId font) const { return *faces.at(static_cast<std::size_t>(font)); }

  // Two files of one name in different folders are told apart.
  std::string free_name(std::string name) const {
    const auto taken = [this](const std::string& wanted) {
      return std::any_of(faces.begin(), faces.end(), [&](const auto& face) { return face->name() == wanted; });
    };
    if (!taken(name)) return name;
    int number = 2;
    while (taken(name + "-" + std::to_string(number))) ++number;
    return name + "-" + std::to_string(number);
  }

  std::variant<FontId, std::string> load(std::string_view asked, const std::string& name, const std::string& path) {
    const auto viewed = system.view(path, most_font_bytes);
    if (const auto* failed = std::get_if<platform::FileError>(&viewed)) {
      return "the font file " + path + " " + failed->what;
    }
    auto opened = Face::open(free_name(name), std::get<platform::SharedBytes>(viewed));
    if (!opened) return "the font file " + path + " holds no TrueType or OpenType font";
    faces.push_back(std::move(opened));
    asked_names.emplace_back(asked);
    return static_cast<FontId>(faces.size()) - 1;
  }

  const platform::System& system;
  std::vector<std::string> asked_names;  // by id
  std::vector<std::unique_ptr<Face>> faces;
  LineShaper shaper;
};

FontSet::FontSet(const platform::System& system) : impl_(std::make_unique<Impl>(system)) {}

FontSet::~FontSet() = default;

std::variant<FontId, std::string> FontSet::open(std::string_view name) {
  const auto known_here = std::find(impl_->asked_names.begin(), impl_->asked_names.end(), name);
  if (known_here != impl_->asked_names.end()) return static_cast<FontId>(known_here - impl_->asked_names.begin());
  if (is_font_path(name)) return impl_->load(name, stem(name), std::string(name));
  const KnownFont* known = known_font(name);
  if (known == nullptr) return unknown_name(name);
  const std::string path = impl_->system.font_path(known->file);
  if (path.empty()) {
    return "the font \"" + known->name + "\" (" + known->file + ") is not installed; it is in the Debian package " +
           known->package;
  }
  return impl_->load(name, known->name, path);
}

std::string FontSet::name(FontId font) const {
  return impl_->face(font).name();
}

std::vector<std::string> FontSet::names() const {
  std::vector<std::string> names;
  for (const auto& face : impl_->faces) names.push_back(face->name());
  return names;
}

ShapedText FontSet::shape(std::string_view text, const TextStyle& style) {
  return impl_->shaper.shape(text, style, impl_->faces);
}

double FontSet::advance(std::string_view text, const TextStyle& style) {
  return impl_->shaper.advance(text, style, impl_->faces);
}

std::optional<std::uint32_t> FontSet::glyph(FontId font, char32_t code_point) {
  return impl_->face(font).glyph(code_point);
}

Extents FontSet::extents(FontId font, std::uint32_t glyph, double size) {
  return impl_->face(font).extents(glyph, size);
}

double FontSet::cap_height(FontId font, double size) {
  const auto glyph = impl_->face(font).glyph(U'H');
  return glyph ? -extents(font, *glyph, size).top : 0;
}

double FontSet::x_height(FontId font, double size) {
  const auto glyph = impl_->face(font).glyph(U'x');
  return glyph ? -extents(font, *glyph, size).top : 0;
}

std::vector<OutlineSegment> FontSet::outline(FontId font, std::uint32_t glyph) {
  return impl_->face(font).outline(glyph, 1000);
}

std::shared_ptr<void> FontSet::shared_native_face(FontId font) {
  return impl_->face(font).native();
}

void* FontSet::native_face(FontId font) {
  return impl_->face(font).native().get();
}

}  // namespace fretsheaf::typeface
