#pragma once

#include <algorithm>
#include <array>

// Characters that look like those of the keyboard and are others: they come along when text is pasted.
namespace fretsheaf::lesson {

// The figure that a letter looks like; 0, no character, for others.
inline char figure_like(char32_t c) {
  if (c == U'O' || c == U'o') return '0';
  return c == U'l' || c == U'I' ? '1' : '\0';
}

inline bool is_like_bar_line(char32_t c) {
  constexpr std::array<char32_t, 6> twins = {U'\u00A6', U'\u01C0', U'\u2502', U'\u2503', U'\u2758', U'\uFF5C'};
  return std::find(twins.begin(), twins.end(), c) != twins.end();
}

inline bool is_long_dash(char32_t c) {
  return (c >= U'\u2010' && c <= U'\u2015') || c == U'\u2212' || c == U'\u2500';
}

inline bool is_curly_quote(char32_t c) {
  return (c >= U'\u201C' && c <= U'\u201F') || c == U'\u00AB' || c == U'\u00BB';
}

inline bool is_curly_apostrophe(char32_t c) {
  return c >= U'\u2018' && c <= U'\u201B';
}

}  // namespace fretsheaf::lesson
