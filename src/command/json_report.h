#pragma once

#include <string>
#include <vector>

#include "sheaf/workshop.h"

namespace fretsheaf::command {

// A lesson as it was named, and what came of it.
struct Checked {
  std::string lesson;
  sheaf::Made made;
};

// What was found in several lessons, as one JSON document for editors:
//   {"version": 1, "files": [{"file": …, "diagnostics": [{"severity", "code", "message", "help", "range"}]}]}
// A range's `start` and `end` have `line` and `column` (in code points) and `utf16` (the column in UTF-16 units), all
// from 1; the end is the place after the last character. `help` may be empty. Every lesson stands there, in the order
// given, one that could not be read with an error at 1:1 that says why; another file (a sheaf.toml, a template) where
// something was found in it.
std::string json_report(const std::vector<Checked>& checked);

}  // namespace fretsheaf::command
