#pragma once

#include <string>
#include <vector>

#include "command/command.h"
#include "sheaf/course_run.h"

namespace fretsheaf::command {

// A word as a shell reads it back: in quotes where it has anything but letters, digits and plain signs.
std::string shell_word(const std::string& word);

// Each job as the command that makes just it, a line each.
std::string sheaf_list(const SheafOptions& options, const std::vector<sheaf::CourseJob>& jobs);

}  // namespace fretsheaf::command
