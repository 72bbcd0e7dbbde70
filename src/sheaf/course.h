#pragma once

#include <string>
#include <variant>
#include <vector>

#include "platform/machine.h"
#include "sheaf/places.h"

namespace fretsheaf::sheaf {

// A lesson of a course, and where its handouts go.
struct CourseLesson {
  std::string path;      // of its file, as a run works with it
  std::string job;       // its file from the course's folder on, without the ending: what its jobs are called by
  std::string name;      // the same as it is recorded
  std::string handouts;  // the path of its handouts up to their suffixes, as a run works with it
  std::string recorded_handouts;
  std::string sheaf;  // the sheaf.toml that it belongs to, as recorded; "" for none
};

struct Course {
  Places places;
  std::vector<CourseLesson> lessons;  // by name
};

// Every *.lesson.toml in the folder and below it. Names that begin with a dot are passed over, and folders that are
// links are not entered. Handouts go to `to`, in the lesson's folders again; with no `to` to the `folder` of their
// sheaf.toml's [output], in the folders from that file on; else beside the lesson. The error says why there is no such
// course: no folder, or two lessons with handouts of one name.
struct NoCourse {
  bool is_request_wrong = false;  // else something cannot be read
  std::string why;
};
std::variant<Course, NoCourse> find_course(const std::string& folder, const std::string& to,
                                           const platform::Machine& system);

}  // namespace fretsheaf::sheaf
