#include "typeface/word_shaper.h"

#include <array>
#include <memory>
#include <utility>

namespace fretsheaf::typeface {
namespace {

// Of remembered text: the words of a course. With its glyphs, about forty times as much memory.
constexpr std::size_t most_remembered_bytes = std::size_t{32} << 10;

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
Buffer glyphs_of(std::string_view word, hb_script_t script, const Face& face, const TextStyle& style) {
  Buffer buffer(hb_buffer_create());
  const int bytes = static_cast<int>(word.size());
  hb_buffer_add_utf8(buffer.get(), word.data(), bytes, 0, bytes);
  hb_buffer_set_direction(buffer.get(), HB_DIRECTION_LTR);
  hb_buffer_set_script(buffer.get(), script);
  hb_buffer_set_language(buffer.get(), hb_language_from_string("en", -1));
  hb_buffer_set_flags(buffer.get(), HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
  const std::vector<hb_feature_t> wanted = features(style);
  constexpr std::array<const char*, 2> shapers = {"ot", nullptr};
  hb_shape_full(face.shaper(), buffer.get(), wanted.data(), static_cast<unsigned>(wanted.size()), shapers.data());
  return buffer;
}

ShapedWord shaped(std::string_view text, double em, hb_buffer_t* buffer) {
  ShapedWord word;
  unsigned count = 0;
  const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer, &count);
  const hb_glyph_position_t* positions = hb_buffer_get_glyph_positions(buffer, nullptr);
  for (unsigned i = 0; i < count; ++i) {
    const bool new_cluster = i == 0 || infos[i].cluster != infos[i - 1].cluster;
    if (new_cluster) word.clusters.push_back({0, 0});
    ++word.clusters.back().glyphs;
    unsigned next = i + 1;
    while (next < count && infos[next].cluster == infos[i].cluster) ++next;
    const std::size_t end = next < count ? infos[next].cluster : text.size();
    if (new_cluster) word.clusters.back().bytes = static_cast<std::uint16_t>(end - infos[i].cluster);
    word.glyphs.push_back({infos[i].codepoint, word.advance + positions[i].x_offset / em, -positions[i].y_offset / em});
    word.advance += positions[i].x_advance / em;
  }
  return word;
}

// All that the glyphs depend on.
void write_key(std::string& key, std::string_view word, hb_script_t script, FontId font, const TextStyle& style) {
  key = std::to_string(font);
  key += style.tabular_figures ? 't' : '-';
  key += style.tracking != 0 ? 's' : '-';
  ((key += std::to_string(script)) += ',') += word;
}

}  // namespace

const ShapedWord& WordShaper::shape(std::string_view word, hb_script_t script, FontId font, const Face& face,
                                    const TextStyle& style) {
  write_key(key_, word, script, font, style);
  if (const auto found = remembered_.find(key_); found != remembered_.end()) return found->second;
  remembered_bytes_ += key_.size();
  if (remembered_bytes_ > most_remembered_bytes) {
    remembered_.clear();
    remembered_bytes_ = key_.size();
  }
  const Buffer buffer = glyphs_of(word, script, face, style);
  return remembered_.emplace(key_, shaped(word, face.units_per_em(), buffer.get())).first->second;
}

}  // namespace fretsheaf::typeface
