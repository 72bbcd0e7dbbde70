#pragma once

#include <map>
#include <string>
#include <vector>

#include "sheaf/course.h"
#include "sheaf/lesson_plan.h"
#include "sheaf/order.h"
#include "sheaf/record.h"

namespace fretsheaf::sheaf {

// Handouts of the record whose lesson is not in the course any more, or has not their key or format any more. Those of
// a lesson without a plan (it has errors) stay, and so do keys and formats that only an earlier command line named.
// `plans` is by the index of the lesson.
std::vector<MadeEntry> gone(const Record& record, const Course& course, const std::map<std::size_t, LessonPlan>& plans,
                            const Order& order);

}  // namespace fretsheaf::sheaf
