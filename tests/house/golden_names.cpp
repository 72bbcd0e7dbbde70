#include "house/golden_names.h"

std::set<std::string> golden_names(std::string_view source) {
  std::set<std::string> names;
  for (const std::string_view opening : {"check_golden(", "GoldenName(", "GoldenName{"}) {
    for (auto at = source.find(opening); at != std::string_view::npos; at = source.find(opening, at + 1)) {
      const auto quote = source.find_first_not_of(" \n", at + opening.size());
      if (quote == std::string_view::npos || source[quote] != '"') continue;
      const auto close = source.find('"', quote + 1);
      names.emplace(source.substr(quote + 1, close - quote - 1));
    }
  }
  return names;
}
