#pragma once

#include <cstddef>
#include <vector>

#include "source/text.h"

namespace fretsheaf::lesson {

// From line and column (in code points) to bytes, quick also in a file that is one enormous line.
class TomlPlaces {
 public:
  explicit TomlPlaces(const source::Text& text);
  std::size_t offset(std::size_t line, std::size_t column) const;

 private:
  static constexpr std::size_t stride = 64;
  const source::Text& text_;
  std::vector<std::size_t> first_of_line_;  // into marks_
  std::vector<std::size_t> marks_;          // the offset of every 64th code point of a line
};

}  // namespace fretsheaf::lesson
