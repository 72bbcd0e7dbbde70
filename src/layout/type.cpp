#include "layout/type.h"

#include <algorithm>
#include <utility>

#include "source/utf8.h"

namespace fretsheaf::layout {
namespace {

using templates::Role;

// An accidental in words: set in the music font, larger and raised so that it sits on the words' line (the house's
// measures).
constexpr double accidental_scale = 1.2;
constexpr double accidental_rise = 0.22;
constexpr double accidental_gap = 0.04;

constexpr bool is_accidental(char32_t c) {
  return (c >= U'\u266D' && c <= U'\u266F') || c == U'\U0001D12A' || c == U'\U0001D12B';
}

sheet::GlyphRun glyph_run(typeface::ShapedRun shaped, double x, double y, double size, sheet::Part part,
                          sheet::Color color) {
  sheet::GlyphRun run;
  run.part = part;
  run.font = shaped.font;
  run.size = size;
  run.color = color;
  run.text = std::move(shaped.text);
  run.glyphs.reserve(shaped.glyphs.size());
  for (const typeface::ShapedGlyph& glyph : shaped.glyphs) run.glyphs.push_back({glyph.id, x + glyph.x, y + glyph.y});
  for (const typeface::ShapedCluster& cluster : shaped.clusters)
    run.clusters.push_back({cluster.bytes, cluster.glyphs});
  return run;
}

// Takes the ink of a piece at (x, y) into the box; an empty piece (a space) has none.
void take_in(sheet::Box& box, bool& any, const typeface::Extents& ink, double x, double y) {
  if (ink.right <= ink.left && ink.bottom <= ink.top) return;
  const sheet::Box at{ink.left + x, ink.top + y, ink.right + x, ink.bottom + y};
  box = any ? sheet::Box{std::min(box.left, at.left), std::min(box.top, at.top), std::max(box.right, at.right),
                         std::max(box.bottom, at.bottom)}
            : at;
  any = true;
}

}  // namespace

Type::Type(typeface::Shaper& shaper, const templates::Template& look, std::vector<std::vector<typeface::FontId>> fonts)
    : shaper_(shaper), look_(look), fonts_(std::move(fonts)) {
  fonts_.resize(templates::role_count);
}

void Type::note_missing(char32_t code_point, Role role) {
  // A lesson in a script that no font has lacks thousands: no more than so many are of use to anybody.
  constexpr std::size_t most = 200;
  if (missing_.size() == most) return;
  const auto known = [&](const MissingCharacter& m) { return m.code_point == code_point && m.role == role; };
  if (std::none_of(missing_.begin(), missing_.end(), known)) missing_.push_back({code_point, role});
}

bool Type::code_has(char32_t code_point) const {
  const auto& fonts = fonts_[static_cast<std::size_t>(Role::code)];
  return !fonts.empty() && shaper_.glyph(fonts.front(), code_point).has_value();
}

Words Type::set(Role role, std::string_view text, sheet::Part part, sheet::Color color) {
  return set_at_size(role, look_.style(role).size, text, part, color);
}

Type::Stretch Type::stretch(Role role, double size, std::string_view text, bool accidental) const {
  if (!accidental) {
    const templates::TypeStyle& style = look_.style(role);
    return {text, role, {fonts_[static_cast<std::size_t>(role)], size, style.tracking, style.tabular}, 0, 0};
  }
  const auto& fonts = fonts_[static_cast<std::size_t>(Role::music)];
  const bool tabular = look_.style(role).tabular;
  return {
      text, Role::music, {fonts, size * accidental_scale, 0, tabular}, size * accidental_gap, -size * accidental_rise};
}

std::vector<Type::Stretch> Type::stretches(Role role, double size, std::string_view text) const {
  std::vector<Stretch> out;
  std::size_t begin = 0;
  for (std::size_t at = 0; at < text.size();) {
    const source::CodePoint c = source::decode_utf8(text.substr(at));
    if (is_accidental(c.code_point) && !(role == Role::code && code_has(c.code_point))) {
      if (at > begin) out.push_back(stretch(role, size, text.substr(begin, at - begin), false));
      out.push_back(stretch(role, size, text.substr(at, c.length), true));
      begin = at + c.length;
    }
    at += c.length;
  }
  if (begin < text.size()) out.push_back(stretch(role, size, text.substr(begin), false));
  return out;
}

Words Type::set_at_size(Role role, double size, std::string_view text, sheet::Part part, sheet::Color color) {
  Words words;
  bool any_ink = false;
  for (const Stretch& stretch : stretches(role, size, text)) {
    typeface::ShapedText shaped = shaper_.shape(stretch.text, stretch.style);
    for (const char32_t c : shaped.missing) note_missing(c, stretch.role);
    const double x = words.width + stretch.gap;
    for (typeface::ShapedRun& run : shaped.runs) {
      words.items.emplace_back(glyph_run(std::move(run), x, stretch.y, stretch.style.size, part, color));
    }
    take_in(words.ink, any_ink, shaped.ink, x, stretch.y);
    words.width += shaped.advance + 2 * stretch.gap;
  }
  return words;
}

double Type::width(Role role, std::string_view text) {
  return width_at_size(role, look_.style(role).size, text);
}

double Type::width_at_size(Role role, double size, std::string_view text) {
  double width = 0;
  for (const Stretch& stretch : stretches(role, size, text)) {
    width += shaper_.advance(stretch.text, stretch.style) + 2 * stretch.gap;
  }
  return width;
}

double Type::cap_height(Role role) {
  const auto& fonts = fonts_[static_cast<std::size_t>(role)];
  return fonts.empty() ? 0 : shaper_.cap_height(fonts.front(), look_.style(role).size);
}

double Type::x_height(Role role) {
  const auto& fonts = fonts_[static_cast<std::size_t>(role)];
  return fonts.empty() ? 0 : shaper_.x_height(fonts.front(), look_.style(role).size);
}

Words Type::sign(char32_t code_point, double space, sheet::Part part) {
  return signs({&code_point, 1}, space, part, {});
}

Words Type::signs(std::u32string_view code_points, double space, sheet::Part part, std::string_view text) {
  const auto& fonts = fonts_[static_cast<std::size_t>(Role::music)];
  sheet::GlyphRun run;
  run.part = part;
  run.size = 4 * space;
  run.text = text;
  Words words;
  bool any_ink = false;
  for (const char32_t code_point : code_points) {
    const auto has = [&](typeface::FontId font) { return shaper_.glyph(font, code_point).has_value(); };
    const auto font = std::find_if(fonts.begin(), fonts.end(), has);
    if (font == fonts.end()) {
      note_missing(code_point, Role::music);
      continue;
    }
    // One run is in one font; all signs of a word come from the first that has one of them.
    if (run.glyphs.empty()) run.font = *font;
    const std::uint32_t glyph = shaper_.glyph(run.font, code_point).value_or(0);
    const typeface::Extents extents = shaper_.extents(run.font, glyph, run.size);
    run.glyphs.push_back({glyph, words.width, 0});
    take_in(words.ink, any_ink, extents, words.width, 0);
    words.width += extents.advance;
  }
  if (run.glyphs.empty()) return {};
  run.clusters.push_back({static_cast<std::uint16_t>(text.size()), static_cast<std::uint16_t>(run.glyphs.size())});
  words.items.emplace_back(std::move(run));
  return words;
}

}  // namespace fretsheaf::layout
