#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "source/range.h"

namespace fretsheaf::source {

// What is to stand in place of a stretch of a file; an empty range puts something in.
struct Edit {
  Range range;
  std::string text;
};

// The bytes with all edits made; those that put something in at one place follow each other as they are listed.
// REQUIRES: the ranges lie in these bytes and do not overlap.
std::string edited(std::string_view bytes, std::vector<Edit> edits);

}  // namespace fretsheaf::source
