#include "typeface/line_shaper.h"

#include <algorithm>
#include <utility>

#include "typeface/itemize.h"

namespace fretsheaf::typeface {
namespace {

// Of remembered text: the lines of a lesson. With its glyphs, about forty times as much memory.
constexpr std::size_t most_remembered_bytes = std::size_t{16} << 10;

bool is_lower(char c) {
  return c >= 'a' && c <= 'z';
}

// Where the words of a text begin, in bytes. Between small letters a space is a word of its own: no font of handouts
// kerns there. Elsewhere some do ("= 92" has another sign in Inter), so that what stands there stays one word.
std::vector<std::size_t> words_of(std::string_view text) {
  std::vector<std::size_t> begins = {0};
  for (std::size_t at = 1; at + 1 < text.size(); ++at) {
    if (text[at] != ' ' || !is_lower(text[at - 1]) || !is_lower(text[at + 1])) continue;
    begins.push_back(at);
    begins.push_back(at + 1);
  }
  return begins;
}

// The words of a run side by side, from `pen` (in ems), which they move on.
ShapedRun side_by_side(TextRun text, FontId font, const Face& face, const TextStyle& style, WordShaper& shaper,
                       double& pen) {
  ShapedRun run{font, std::move(text.text), {}, {}};
  const std::string_view whole = run.text;
  const std::vector<std::size_t> begins = words_of(whole);
  for (std::size_t i = 0; i < begins.size(); ++i) {
    const std::size_t end = i + 1 < begins.size() ? begins[i + 1] : whole.size();
    const ShapedWord& word = shaper.shape(whole.substr(begins[i], end - begins[i]), text.script, font, face, style);
    for (const ShapedGlyph& glyph : word.glyphs) run.glyphs.push_back({glyph.id, pen + glyph.x, glyph.y});
    run.clusters.insert(run.clusters.end(), word.clusters.begin(), word.clusters.end());
    pen += word.advance;
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
  for (TextRun& run : itemized.runs) {
    const FontId font = style.fonts[run.font];
    const Face& face = *faces.at(static_cast<std::size_t>(font));
    // A run of joiners alone has no glyphs.
    ShapedRun glyphs = side_by_side(std::move(run), font, face, style, words_, shaped.advance);
    if (!glyphs.glyphs.empty()) shaped.runs.push_back(std::move(glyphs));
  }
  remembered_bytes_ += key.size();
  if (remembered_bytes_ > most_remembered_bytes) {
    remembered_.clear();
    remembered_bytes_ = key.size();
  }
  return remembered_.emplace(std::move(key), std::move(shaped)).first->second;
}

double LineShaper::advance(std::string_view text, const TextStyle& style,
                           const std::vector<std::unique_ptr<Face>>& faces) {
  const ShapedText& shaped = shape_at_one_em(text, style, faces);
  std::size_t clusters = 0;
  for (const ShapedRun& run : shaped.runs) clusters += run.clusters.size();
  return shaped.advance * style.size + static_cast<double>(clusters) * style.tracking;
}

ShapedText LineShaper::shape(std::string_view text, const TextStyle& style,
                             const std::vector<std::unique_ptr<Face>>& faces) {
  ShapedText shaped = to_size(shape_at_one_em(text, style, faces), style);
  shaped.ink = ink_of(shaped, style.size, faces);
  return shaped;
}

}  // namespace fretsheaf::typeface
