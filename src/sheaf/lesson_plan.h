#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheaf/course.h"
#include "sheaf/fingerprints.h"
#include "sheaf/order.h"
#include "sheaf/record.h"
#include "sheaf/task.h"

// What one lesson comes to in a run: told from the record where nothing that it was made from has changed, else from a
// reading of it.
namespace fretsheaf::sheaf {

struct LessonPlan {
  Print fingerprint;
  std::vector<std::string> suffixes;      // of the handouts that are asked for
  std::vector<std::string> own_suffixes;  // in its own key and those of also-in
  std::vector<Format> formats;            // that are asked for
};

// nullopt where the record does not know the lesson as it is now, or cannot tell which keys are asked for.
std::optional<LessonPlan> recalled(const CourseLesson& lesson, const Print& now, const Record& record,
                                   Fingerprints& fingerprints, const Order& order);

// From a worker's reading, which goes into the record too.
LessonPlan learned(const CourseLesson& lesson, const Reading& reading, const Places& places,
                   const Fingerprints& fingerprints, const Order& order, Record& record);

}  // namespace fretsheaf::sheaf
