#pragma once

#include <string>
#include <vector>

#include "lesson/reader.h"

namespace fretsheaf::lesson {

// What was put right, "3 tabs", and the line of the file, as it was, that it begins at.
struct TidyNote {
  int line = 1;
  std::string what;
};

struct Tidied {
  std::string bytes;  // the file as it is to be; as it was where nothing is to be done
  std::vector<TidyNote> notes;
  ReadLesson read;  // of these bytes: a grid with errors is left as it stands, but for its characters
};

// Tidies a lesson file: its grids with their columns in line, and mended what can be mended without a guess: curly
// quotes, long dashes and other lookalikes, tabs, and bar lines out of line. What may be read in two ways stays.
// Outside its grids no byte changes, but for quotes without which the file is no TOML. Doing it twice changes nothing
// more.
Tidied tidy(const std::string& path, std::string bytes, const platform::System& system);

}  // namespace fretsheaf::lesson
