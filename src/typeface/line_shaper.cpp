#include "typeface/line_shaper.h"

#include <algorithm>
#include <array>
#include <utility>

#include "typeface/itemize.h"

namespace fretsheaf::typeface {
namespace {

// Of remembered text; with its glyphs, about forty times as much memory.
constexpr std::size_t most_remembered_bytes = std::size_t{64} << 10;

struct BufferDeleter {
  void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};
using Buffer = std::unique_ptr<hb_buffer_t, BufferDeleter>;

// Letters that are spaced out keep no ligatures between them.
std::vector<hb_feature_t> features(const TextStyle& style) {
  std::vector<hb_feature_t> wanted;
  const auto set = [&wanted](hb_tag_t tag, std::uint32_t value) {
    wanted.push_back({tag, value, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END});
  };
  if (style.tabular_figures) set(HB_TAG('t', 'n', 'u', 'm'), 1);
  if (style.tracking != 0) {
    set(HB_TAG('l', 'i', 'g', 'a'), 0);
    set(HB_TAG('c', 'l', 'i', 'g'), 0);
  }
  return wanted;
}

// Language and direction are said, because the defaults follow the locale; the shaper is said, because where Graphite
// is built in it would come first, and is several times slower.
Buffer shape_run(const TextRun& run, const Face& face, const TextStyle& style) {
  Buffer buffer(hb_buffer_create());
  const int bytes = static_cast<int>(run.text.size());
  hb_buffer_add_utf8(buffer.get(), run.text.data(), bytes, 0, bytes);
  hb_buffer_set_direction(buffer.get(), HB_DIRECTION_LTR);
  hb_buffer_set_script(buffer.get(), run.script);
  hb_buffer_set_language(buffer.get(), hb_language_from_string("en", -1));
  hb_buffer_set_flags(buffer.get(), HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
  const std::vector<hb_feature_t> wanted = features(style);
  constexpr std::array<const char*, 2> shapers = {"ot", nullptr};
  hb_shape_full(face.shaper(), buffer.get(), wanted.data(), static_cast<unsigned>(wanted.size()), shapers.data());
  return buffer;
}

// The glyphs of a buffer as a run that starts at `pen` (in ems), which it moves on.
ShapedRun to_run(const TextRun& text, FontId font, const Face& face, hb_buffer_t* buffer, double& pen) {
  ShapedRun run{font, text.text, {}, {}};
  unsigned count = 0;
  const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer, &count);
  const hb_glyph_position_t* positions = hb_buffer_get_glyph_positions(buffer, nullptr);
  const double em = face.units_per_em();
  for (unsigned i = 0; i < count; ++i) {
    const bool new_cluster = i == 0 || infos[i].cluster != infos[i - 1].cluster;
    if (new_cluster) run.clusters.push_back({0, 0});
    ++run.clusters.back().glyphs;
    unsigned next = i + 1;
    while (next < count && infos[next].cluster == infos[i].cluster) ++next;
    const std::size_t end = next < count ? infos[next].cluster : text.text.size();
    if (new_cluster) run.clusters.back().bytes = static_cast<std::uint16_t>(end - infos[i].cluster);
    run.glyphs.push_back({infos[i].codepoint, pen + positions[i].x_offset / em, -positions[i].y_offset / em});
    pen += positions[i].x_advance / em;
  }
  return run;
}

void join(std::optional<Extents>& whole, const Extents& part, double x, double y) {
  if (part.right <= part.left && part.bottom <= part.top) return;
  const Extents moved{part.left + x, part.top + y, part.right + x, part.bottom + y, 0};
  if (!whole) {
    whole = moved;
    return;
  }
  whole->left = std::min(whole->left, moved.left);
  whole->top = std::min(whole->top, moved.top);
  whole->right = std::max(whole->right, moved.right);
  whole->bottom = std::max(whole->bottom, moved.bottom);
}

// Scales to the size and adds the tracking, once after each cluster.
ShapedText to_size(ShapedText shaped, const TextStyle& style) {
  double spaced = 0;
  for (ShapedRun& run : shaped.runs) {
    std::size_t glyph = 0;
    for (const ShapedCluster& cluster : run.clusters) {
      for (std::size_t end = glyph + cluster.glyphs; glyph < end; ++glyph) {
        run.glyphs[glyph].x = run.glyphs[glyph].x * style.size + spaced;
        run.glyphs[glyph].y *= style.size;
      }
      spaced += style.tracking;
    }
  }
  shaped.advance = shaped.advance * style.size + spaced;
  return shaped;
}

Extents ink_of(const ShapedText& shaped, double size, const std::vector<std::unique_ptr<Face>>& faces) {
  std::optional<Extents> ink;
  for (const ShapedRun& run : shaped.runs) {
    Face& face = *faces.at(static_cast<std::size_t>(run.font));
    for (const ShapedGlyph& glyph : run.glyphs) join(ink, face.extents(glyph.id, size), glyph.x, glyph.y);
  }
  Extents whole = ink.value_or(Extents{});
  whole.advance = shaped.advance;
  return whole;
}

std::string key_of(std::string_view text, const TextStyle& style) {
  std::string key;
  for (const FontId font : style.fonts) (key += std::to_string(font)) += ',';
  key += style.tabular_figures ? 't' : '-';
  key += style.tracking != 0 ? 's' : '-';
  return key += text;
}

}  // namespace

const ShapedText& LineShaper::shape_at_one_em(std::string_view text, const TextStyle& style,
                                              const std::vector<std::unique_ptr<Face>>& faces) {
  std::string key = key_of(text, style);
  if (const auto found = remembered_.find(key); found != remembered_.end()) return found->second;
  const auto has = [&](std::size_t font, char32_t c) {
    return faces.at(static_cast<std::size_t>(style.fonts[font]))->glyph(c).has_value();
  };
  Itemized itemized = itemize(text, style.fonts.size(), has);
  ShapedText shaped;
  shaped.missing = std::move(itemized.missing);
  for (const TextRun& run : itemized.runs) {
    const FontId font = style.fonts[run.font];
    const Face& face = *faces.at(static_cast<std::size_t>(font));
    const Buffer buffer = shape_run(run, face, style);
    // A run of joiners alone has no glyphs.
    ShapedRun glyphs = to_run(run, font, face, buffer.get(), shaped.advance);
    if (!glyphs.glyphs.empty()) shaped.runs.push_back(std::move(glyphs));
  }
  remembered_bytes_ += key.size();
  if (remembered_bytes_ > most_remembered_bytes) {
    remembered_.clear();
    remembered_bytes_ = key.size();
  }
  return remembered_.emplace(std::move(key), std::move(shaped)).first->second;
}

ShapedText LineShaper::shape(std::string_view text, const TextStyle& style,
                             const std::vector<std::unique_ptr<Face>>& faces) {
  ShapedText shaped = to_size(shape_at_one_em(text, style, faces), style);
  shaped.ink = ink_of(shaped, style.size, faces);
  return shaped;
}

}  // namespace fretsheaf::typeface
