#include "source/first_few.h"

#include <algorithm>

namespace fretsheaf::source {

std::string first_few(std::span<const std::string> names, std::size_t most) {
  std::string all;
  for (const std::string& name : names.first(std::min(most, names.size()))) {
    if (!all.empty()) all += ", ";
    all += name;
  }
  if (names.size() > most) all += " and " + std::to_string(names.size() - most) + " more";
  return all;
}

}  // namespace fretsheaf::source
