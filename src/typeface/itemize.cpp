#include "typeface/itemize.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <span>

namespace fretsheaf::typeface {
namespace {

constexpr std::size_t most_marks = 30;

using Cluster = std::span<const Character>;

bool in(char32_t c, char32_t first, char32_t last) {
  return c >= first && c <= last;
}

bool is_joiner(char32_t c) {
  return c == U'\u200C' || c == U'\u200D';
}

// The assigned characters of Default_Ignorable_Code_Point (Unicode 15, DerivedCoreProperties.txt) but the joiners.
bool is_invisible(char32_t c) {
  return c == 0xAD || c == 0x34F || c == 0x61C || in(c, 0x115F, 0x1160) || in(c, 0x17B4, 0x17B5) ||
         in(c, 0x180B, 0x180F) || c == 0x200B || in(c, 0x200E, 0x200F) || in(c, 0x202A, 0x202E) ||
         in(c, 0x2060, 0x206F) || c == 0x3164 || in(c, 0xFE00, 0xFE0F) || c == 0xFEFF || c == 0xFFA0 ||
         in(c, 0x1BCA0, 0x1BCA3) || in(c, 0xE0000, 0xE0FFF);
}

// No printed text has these, whatever a font may say.
bool is_refused(char32_t c) {
  return c < 0x20 || in(c, 0x7F, 0x9F) || in(c, 0x2028, 0x2029) || in(c, 0xFDD0, 0xFDEF) || (c & 0xFFFE) == 0xFFFE;
}

// Spaces of other widths, which the shaper makes from the plain one.
bool is_wide_space(char32_t c) {
  return in(c, 0x2000, 0x200A) || c == 0xA0 || c == 0x202F || c == 0x205F;
}

bool is_mark(char32_t c) {
  switch (hb_unicode_general_category(hb_unicode_funcs_get_default(), c)) {
    case HB_UNICODE_GENERAL_CATEGORY_NON_SPACING_MARK:
    case HB_UNICODE_GENERAL_CATEGORY_SPACING_MARK:
    case HB_UNICODE_GENERAL_CATEGORY_ENCLOSING_MARK:
      return true;
    default:
      return false;
  }
}

struct BufferDeleter {
  void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};

// What a reader copies is UTF-8 whatever was read.
std::string_view valid(const Character& character) {
  return character.code_point == U'\uFFFD' ? std::string_view("\uFFFD") : character.bytes;
}

class Itemizer {
 public:
  Itemizer(std::size_t fonts, const HasCodePoint& has) : fonts_(fonts), has_(has) {}

  Itemized run(std::span<const Character> characters) {
    while (!characters.empty()) {
      const std::size_t length = cluster_length(characters);
      place(characters.first(length));
      characters = characters.subspan(length);
    }
    return std::move(result_);
  }

 private:
  static std::size_t cluster_length(std::span<const Character> characters) {
    std::size_t length = 1;
    while (length < characters.size()) {
      const char32_t c = characters[length].code_point;
      if (!is_mark(c) && !is_joiner(c)) break;
      ++length;
    }
    return length;
  }

  // The font itself, or the shaper from what the font has: a precomposed letter from its parts, a space from a space.
  bool can_show(std::size_t font, char32_t c) const {
    if (is_joiner(c) || has_(font, c)) return true;
    if (is_wide_space(c)) return has_(font, U' ');
    hb_codepoint_t base = 0;
    hb_codepoint_t mark = 0;
    return hb_unicode_decompose(hb_unicode_funcs_get_default(), c, &base, &mark) != 0 && can_show(font, base) &&
           (mark == 0 || has_(font, mark));
  }

  bool can_show_all(std::size_t font, Cluster cluster) const {
    char32_t before = 0;
    for (const auto& [c, bytes] : cluster) {
      hb_codepoint_t composed = 0;
      if (before != 0 && hb_unicode_compose(hb_unicode_funcs_get_default(), before, c, &composed) != 0 &&
          has_(font, composed)) {
        before = composed;
        continue;
      }
      if (!can_show(font, c)) return false;
      before = c;
    }
    return true;
  }

  std::optional<std::size_t> first_font(Cluster cluster) const {
    for (std::size_t font = 0; font < fonts_; ++font) {
      if (can_show_all(font, cluster)) return font;
    }
    return std::nullopt;
  }

  void place(Cluster cluster) {
    if (cluster.size() > most_marks + 1) {
      for (const Character& character : cluster.subspan(most_marks + 1)) report(character.code_point);
      cluster = cluster.first(most_marks + 1);
    }
    if (const auto font = first_font(cluster)) return append(*font, cluster);
    for (std::size_t i = 0; i < cluster.size(); ++i) {
      const Cluster single = cluster.subspan(i, 1);
      const auto font = first_font(single);
      font ? append(*font, single) : report(single.front().code_point);
    }
  }

  void append(std::size_t font, Cluster cluster) {
    const hb_script_t script = hb_unicode_script(hb_unicode_funcs_get_default(), cluster.front().code_point);
    const bool neutral = script == HB_SCRIPT_COMMON || script == HB_SCRIPT_INHERITED || script == HB_SCRIPT_UNKNOWN;
    std::vector<TextRun>& runs = result_.runs;
    const bool joins = !runs.empty() && runs.back().font == font &&
                       (neutral || runs.back().script == HB_SCRIPT_COMMON || runs.back().script == script);
    if (!joins) runs.push_back({font, HB_SCRIPT_COMMON, ""});
    if (!neutral) runs.back().script = script;
    for (const Character& character : cluster) runs.back().text += valid(character);
  }

  void report(char32_t c) {
    std::vector<char32_t>& missing = result_.missing;
    constexpr std::size_t most = 200;  // so that a long word of another script costs no more than its length
    if (missing.size() == most) return;
    if (std::find(missing.begin(), missing.end(), c) == missing.end()) missing.push_back(c);
  }

  std::size_t fonts_;
  const HasCodePoint& has_;
  Itemized result_;
};

}  // namespace

std::vector<Character> decode(std::string_view text) {
  const std::unique_ptr<hb_buffer_t, BufferDeleter> buffer(hb_buffer_create());
  hb_buffer_add_utf8(buffer.get(), text.data(), static_cast<int>(text.size()), 0, static_cast<int>(text.size()));
  unsigned count = 0;
  const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer.get(), &count);
  std::vector<Character> characters(count);
  for (unsigned i = 0; i < count; ++i) {
    const std::size_t end = i + 1 < count ? infos[i + 1].cluster : text.size();
    characters[i] = {infos[i].codepoint, text.substr(infos[i].cluster, end - infos[i].cluster)};
  }
  return characters;
}

Itemized itemize(std::string_view text, std::size_t fonts, const HasCodePoint& has) {
  std::vector<Character> characters = decode(text);
  std::erase_if(characters, [](const Character& character) { return is_invisible(character.code_point); });
  const HasCodePoint printed = [&has](std::size_t font, char32_t c) { return !is_refused(c) && has(font, c); };
  return Itemizer(fonts, printed).run(characters);
}

}  // namespace fretsheaf::typeface
