#pragma once

#include <string>

#include "command/progress.h"
#include "sheaf/course_run.h"

namespace fretsheaf::command {

// What became of the files that are gone, a line each, and the run in one line:
//   made 12, up to date 1188, failed 0, in 3.2 s
std::string sheaf_report(const sheaf::Tally& tally, double seconds);

// The same as one JSON document for programs:
//   {"version": 1, "made": …, "up-to-date": …, "failed": …, "seconds": …, "stopped": false,
//    "files": […], "gone": […], "removed": […], "kept": […], "findings": [{"file", "severity", "code", "message",
//    "help", "range"}]}
// `files` were made, in the order of their names; a range is as `check --json` has it.
std::string sheaf_document(const sheaf::Tally& tally, const std::vector<sheaf::Finding>& findings, double seconds);

}  // namespace fretsheaf::command
