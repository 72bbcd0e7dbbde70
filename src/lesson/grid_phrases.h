#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "theory/rational.h"

// Turns of phrase that many of the grid's messages share.
namespace fretsheaf::lesson {

// As written, in backquotes; the beginning of what is very long.
inline std::string tick(std::string_view text) {
  constexpr std::size_t most = 80;
  if (text.size() <= most) return "`" + std::string(text) + "`";
  const auto starts = [&](std::size_t at) { return (static_cast<unsigned char>(text[at]) & 0xC0) != 0x80; };
  std::size_t end = most;
  while (!starts(end)) --end;
  return "`" + std::string(text.substr(0, end)) + "…`";
}

// "1 count", "1/2 count", "3 counts".
inline std::string counts_phrase(theory::Rational amount) {
  return amount.to_string() + (amount > theory::Rational(1) ? " counts" : " count");
}

inline std::string number_phrase(std::size_t number, std::string_view noun) {
  return std::to_string(number) + " " + std::string(noun) + (number == 1 ? "" : "s");
}

// "G, D, A and E"
inline std::string listed(const std::vector<std::string>& words) {
  std::string result;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) result += i + 1 == words.size() ? " and " : ", ";
    result += words[i];
  }
  return result;
}

}  // namespace fretsheaf::lesson
