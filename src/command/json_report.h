#pragma once

#include <string>
#include <vector>

#include "sheaf/workshop.h"

namespace fretsheaf::command {

// What was found in several lessons, as one JSON document for editors:
//   {"version": 1, "files": [{"file": …, "diagnostics": [{"severity", "code", "message", "help", "range"}]}]}
// A range's `start` and `end` have `line` and `column` (in code points) and `utf16` (the column in UTF-16 units), all
// from 1; the end is the place after the last character. `help` may be empty. Every lesson that could be read stands
// there, in the order given; another file (a sheaf.toml, a template) where something was found in it.
std::string json_report(const std::vector<sheaf::Made>& checked);

}  // namespace fretsheaf::command
