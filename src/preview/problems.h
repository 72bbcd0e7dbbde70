#pragma once

#include <string>
#include <vector>

#include "sheaf/workshop.h"

namespace fretsheaf::preview {

// What is wrong with a lesson, in the words of the command line, in the parts that a page sets apart.
struct Problem {
  bool is_error = true;
  std::string file;  // as the page calls it: its name without folders
  int line = 1;
  int column = 1;
  std::string message;
  std::string excerpt;  // the line, and the carets under the place in a line of their own; "" where there is none
  std::string help;     // may be empty
};

// Adds what was made known in making something, the errors of a file first, and the reason of a refusal.
void add_problems(const sheaf::Made& made, std::vector<Problem>& problems);

bool any_error(const std::vector<Problem>& problems);

}  // namespace fretsheaf::preview
