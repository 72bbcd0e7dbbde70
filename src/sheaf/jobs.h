#pragma once

#include <string>
#include <variant>
#include <vector>

#include "lesson/lesson.h"
#include "sheaf/workshop.h"

namespace fretsheaf::sheaf {

// The jobs of a request, in the order of its keys; or why the request cannot be met: a key, an instrument or a capo
// that this lesson cannot have, or two jobs with one name. `look` is the name of the template that is used.
std::variant<std::vector<Job>, std::string> jobs_of(const Request& request, const lesson::Lesson& lesson,
                                                    const std::string& look);

// "there is no such instrument; did you mean 'ukulele'?"
std::string no_such_instrument(const std::string& name);

}  // namespace fretsheaf::sheaf
