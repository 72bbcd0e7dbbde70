#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "source/range.h"

namespace fretsheaf::source {

// A place as an editor shows it: line and column count from 1; `column` counts code points and `utf16` UTF-16 units.
// A byte-order mark is no column. A CRLF is one line end.
struct Position {
  int line = 1;
  int column = 1;
  int utf16 = 1;

  bool operator==(const Position&) const = default;
};

// The bytes of one file, and the way from a byte offset to a place that a teacher can find. Holds valid UTF-8.
class Text {
 public:
  // `name` is how diagnostics call the file (as it was given on the command line).
  Text(std::string name, std::string bytes);

  const std::string& name() const { return name_; }
  const std::string& bytes() const { return bytes_; }
  int line_count() const { return static_cast<int>(line_begins_.size()); }

  // The line's bytes without its line end (and without a byte-order mark). REQUIRES: 1 <= line <= line_count().
  std::string_view line(int line) const;

  Position position(std::size_t offset) const;

  // The offset of a place; a column past the line's end gives the line's end.
  std::size_t offset(int line, int column) const;

 private:
  // A known place inside a long line, so that no search has to begin at the line's start.
  struct Milestone {
    std::size_t offset = 0;
    int column = 1;
    int utf16 = 1;
  };

  // The latest milestone that is not `past` what is looked for (they are in order); the line's start where there is
  // none.
  template <typename Past>
  Milestone milestone(int line, Past past) const;
  void set_milestones();

  std::string name_;
  std::string bytes_;
  std::vector<std::size_t> line_begins_;
  std::map<int, std::vector<Milestone>> milestones_;  // of long lines, by number
};

// All files that one run of a reader looked at, in the order they were opened: FileId indexes them.
class Files {
 public:
  FileId add(Text text);
  const Text& operator[](FileId id) const { return texts_[id]; }
  std::size_t size() const { return texts_.size(); }

 private:
  std::vector<Text> texts_;
};

}  // namespace fretsheaf::source
