#include "layout/pattern.h"

#include <utility>
#include <vector>

#include "source/utf8.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

// A part of a pattern, and the dot with its spaces that stands before it.
struct PatternPart {
  std::string before;
  std::string text;
};

// Parts lie between dots that have a space on either side.
std::vector<PatternPart> parts_of(std::string_view pattern) {
  constexpr std::string_view dot = " \u00B7 ";
  std::vector<PatternPart> parts(1);
  std::size_t begin = 0;
  for (std::size_t at = 0; (at = pattern.find(dot, at)) != std::string_view::npos;) {
    std::size_t from = at;
    std::size_t to = at + dot.size();
    while (from > begin && pattern[from - 1] == ' ') --from;
    while (to < pattern.size() && pattern[to] == ' ') ++to;
    parts.back().text = pattern.substr(begin, from - begin);
    parts.push_back({std::string(pattern.substr(from, to - from)), {}});
    at = begin = to;
  }
  parts.back().text = pattern.substr(begin);
  return parts;
}

bool is_of_word(char32_t c) {
  if (c < 0x80) return (c >= U'0' && c <= U'9') || (c >= U'A' && c <= U'Z') || (c >= U'a' && c <= U'z');
  return c >= 0xC0 && (c < 0x2000 || c > 0x2BFF);  // neither a sign nor a mark between words
}

// Whether a text has these words in it, whole: "B" is none of "Bass class".
bool has_words(std::string_view text, std::string_view words) {
  const std::u32string whole = source::from_utf8(text);
  const std::u32string sought = source::from_utf8(words);
  for (std::size_t at = 0; (at = whole.find(sought, at)) != std::u32string::npos; ++at) {
    const std::size_t end = at + sought.size();
    const bool joined_before = at > 0 && is_of_word(whole[at - 1]) && is_of_word(sought.front());
    const bool joined_after = end < whole.size() && is_of_word(whole[end]) && is_of_word(sought.back());
    if (!joined_before && !joined_after) return true;
  }
  return false;
}

// Whether another part has these words in it already; of two alike the first stays.
bool said(const std::vector<PatternPart>& parts, std::size_t which) {
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i == which || !has_words(parts[i].text, parts[which].text)) continue;
    if (parts[i].text != parts[which].text || i < which) return true;
  }
  return false;
}

}  // namespace

std::string filled_pattern(std::string_view pattern, const score::Heading& heading) {
  return filled_pattern(pattern, heading, {});
}

std::string filled_pattern(std::string_view pattern, const score::Heading& heading, const PageTexts& page) {
  const std::string title = score::plain(heading.title);
  std::vector<PatternPart> parts = parts_of(pattern);
  for (PatternPart& part : parts) {
    part.text = words::fill(part.text, {{"title", title},
                                        {"series", heading.series},
                                        {"number", heading.number},
                                        {"level", heading.level},
                                        {"teacher", page.teacher},
                                        {"copyright", page.copyright},
                                        {"link", page.link},
                                        {"page", page.page}});
  }
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i].text.empty() || said(parts, i)) continue;
    if (!text.empty()) text += parts[i].before;
    text += parts[i].text;
  }
  return text;
}

}  // namespace fretsheaf::layout
