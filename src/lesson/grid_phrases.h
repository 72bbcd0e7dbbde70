#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "theory/rational.h"

// Turns of phrase that many of the grid's messages share.
namespace fretsheaf::lesson {

// As written, in backquotes.
inline std::string tick(std::string_view text) {
  return "`" + std::string(text) + "`";
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
