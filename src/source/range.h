#pragma once

#include <cstdint>

namespace fretsheaf::source {

// Which of the files that were read a range lies in: an index into `Files`. The lesson itself is always 0.
using FileId = std::uint16_t;

// A half-open stretch of bytes [begin, end) of a file as it lies on disk (a byte-order mark and CRs count).
struct Range {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  FileId file = 0;

  bool operator==(const Range&) const = default;
};

// The smallest range that holds both. REQUIRES: both lie in one file.
inline Range joined(Range a, Range b) {
  return {a.begin < b.begin ? a.begin : b.begin, a.end > b.end ? a.end : b.end, a.file};
}

// A value and where it was written.
template <typename T>
struct Located {
  T value{};
  Range range{};
};

}  // namespace fretsheaf::source
